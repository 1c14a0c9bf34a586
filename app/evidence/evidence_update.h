// SPDX-License-Identifier: GPL-3.0-or-later
// Puts the source files and the result into a printed report: as embedded and associated files
// (ISO 32000-2, 7.11.4 and 14.13; ISO 19005-3, Annex E), appended to the bytes of the report.
//
// What else is needed to evaluate them again and to sign stands in the document's own page-piece dictionary
// (ISO 32000-1, 14.5), under the name Soakwright: see evidence_reader.h for what comes out of it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "app/evidence/pdf_value.h"
#include "core/problems/problem.h"
#include "core/report/report_contents.h"
#include "core/system/watch.h"

namespace soakwright::evidence {

/// A box on a page that waits for a signature.
struct SignatureBox {
  Person::Role role = Person::Role::performed;
  std::string name;             ///< that is printed beside it; empty where none is
  std::size_t page = 0;         ///< from 0
  std::array<double, 4> box{};  ///< left, bottom, right, top in points from the page's lower left corner
  bool operator==(const SignatureBox&) const = default;
};

struct PrintedReport {
  std::string document;  ///< the PDF without files
  std::vector<SignatureBox> boxes;
  std::string set_up;  ///< what the bytes of the pages depend on beside the report: Qt, fonts
  std::string issued;  ///< the day that the pages print
  std::int64_t created_s = 0;
};

/// An attached file as the report holds it.
struct PackedFile {
  std::string md5;       ///< of its bytes, as ISO 32000-1, table 46, asks for it
  std::string deflated;  ///< its bytes
};
/// In the order of `files`. It takes as long as printing a report: to be begun before. Once `watch` is
/// cancelled, files are missing.
std::vector<PackedFile> packed(const std::vector<AttachedFile>& files, const Watch& watch = {});

/// The whole file, with `contents.files` in it, which are `files`. A fault where the document is not built as
/// expected.
Result<std::string> with_evidence(const PrintedReport& printed, const ReportContents& contents,
                                  const std::vector<PackedFile>& files);

/// Names under which the files are attached, in their order: procedure.toml, job.toml, review.toml,
/// result.json, and logs under their own. A name that is taken gets a number: log-2.csv.
std::vector<std::string> attached_names(const std::vector<AttachedFile>& files);

}  // namespace soakwright::evidence
