// SPDX-License-Identifier: GPL-3.0-or-later
// Takes the source files and the result out of a report, and what else with_evidence() wrote into it.
//
// It reads the report as it was printed, which is the file's first two revisions; what was appended since is
// not looked at here. Whether the files belong together is not decided here either: they are evaluated again
// for that.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/evidence/evidence_update.h"
#include "app/evidence/pdf_file.h"
#include "core/problems/problem.h"
#include "core/report/report_contents.h"
#include "core/system/watch.h"

namespace soakwright::evidence {

/// Index of the revision that holds the evidence: the pages are the first, signatures come after.
constexpr std::size_t kEvidenceRevision = 1;

struct TakenEvidence {
  std::vector<AttachedFile> files;
  std::vector<SignatureBox> boxes;
  std::string version;  ///< of the program that wrote the report
  std::string set_up;   ///< PrintedReport::set_up
  std::string deflate;  ///< deflate_version() of the writer
  std::int64_t created_s = 0;
  std::string issued;  ///< PrintedReport::issued
  Paper paper = Paper::a4;
  std::optional<TemperatureUnit> unit;
  bool both_units = false;           ///< ReportOptions::both_units
  std::vector<std::string> unsaved;  ///< ReportOptions::unsaved
  std::optional<DateOrder> dates;

  /// The one file of that kind (the first of a previous record's); null where there is none.
  [[nodiscard]] const AttachedFile* file(AttachedFile::Kind kind) const;
};

/// bad_input where the file is no report with evidence, or its evidence is damaged: a checksum or a size that
/// does not fit, a kind that is there twice, a log or a result that is missing.
Result<TakenEvidence> evidence_of(const PdfFile& file, const std::string& path, const Watch& watch = {});

}  // namespace soakwright::evidence
