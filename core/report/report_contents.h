// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that a report's file holds: the pages, and inside it the source files and the result, so that
// the result can be checked from the report alone.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/report/report.h"
#include "core/units/word_table.h"

namespace soakwright {

/// A file inside the report, byte for byte.
struct AttachedFile {
  enum class Kind { log, procedure, job, review, result, previous_log, previous_job, picture };
  Kind kind = Kind::log;
  std::size_t previous = 0;  ///< which of the job's previous records, from 0; of the kinds previous_… only
  std::string name;          ///< the file's own, without folders
  std::string bytes;
  std::optional<std::int64_t> modified_s;  ///< Unix time; none where no file holds these bytes
};

inline constexpr auto kAttachedKindWords = word_table<AttachedFile::Kind::picture>(
    "log", "procedure", "job", "review", "result", "previous-log", "previous-job", "picture");

struct ReportContents {
  Report report;
  std::vector<AttachedFile> files = {};
  ReportOptions options = {};
  std::optional<DateOrder> dates = {};         ///< as the user gave it beside the job
  std::string issued = {};                     ///< the day that the report prints; empty: today
  std::optional<std::int64_t> created_s = {};  ///< Unix time that the file states; none: when it is written
};

/// The report of an analysis that inspect() or check() gave, with its files. They are read again: bad_input
/// where one is no longer what was evaluated, cannot_open where it cannot be read. The report names the
/// result's SHA-256.
Result<ReportContents> report_contents(const Analysis& analysis, const ReportOptions& options = {});

}  // namespace soakwright
