// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that can be checked about a report, line by line; verifying prints it, and signing does not sign
// what fails it.
//
// 1. PdfFile::read_file()   a chain of revisions, with nothing behind it
// 2. evidence_of()          the files inside
// 3. evaluate_evidence()    the result again from these files
// 4. ReportPrinter          the pages again from this result
// 5. signatures_in()        what each signature covers and adds; check_cms()
// 6. field_again()          the words of each signature's field again
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/pdf_file.h"
#include "app/signing/found_signature.h"
#include "core/evaluate/analysis.h"
#include "core/report/signing_border.h"

namespace soakwright::signing {

struct Examination {
  std::vector<CheckLine> lines;
  evidence::PdfFile file;
  evidence::TakenEvidence taken;
  std::vector<FoundSignature> signatures;
  std::string set_up_here;  ///< what this program prints with; empty where it could not print
  /// Of the files inside, evaluated again; null where they cannot be.
  std::shared_ptr<const Analysis> analysis;
};

/// bad_input where the file is no report that can be looked at, cannot_open where it cannot be read.
Result<Examination> examine(const VerifyOrder& order, const ReportPrinter& printer, const Watch& watch = {});

}  // namespace soakwright::signing
