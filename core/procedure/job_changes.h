// SPDX-License-Identifier: GPL-3.0-or-later
// Edits in the text of a job: a key set, replaced or taken out at the place that the parser reports.
//
// Comments, order and line ends of everything else stay as they are, to the byte. Each edit gives the whole
// new text; what it means is parse_job()'s to say (job_file.h). A text that is not TOML is a problem.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"

namespace soakwright {

/// A column by everything that an entry may call it: its header cell, its name without unit, its number.
/// The first is what a new entry calls it.
struct ColumnNames {
  std::vector<std::string> names;
  bool operator==(const ColumnNames&) const = default;
};

/// One key of [import], or of the [[thermocouple]] entry of `column`; no value takes it out.
struct JobChange {
  std::optional<ColumnNames> column;
  std::string key;
  std::optional<std::string> value;  ///< as text; `header_line` is written as a number
  bool operator==(const JobChange&) const = default;
};

/// `text` with the change; `file` names it in problems.
Result<std::string> changed_job(std::string_view text, const JobChange& change, const std::string& file);
/// One after the other.
Result<std::string> changed_job(std::string_view text, const std::vector<JobChange>& changes,
                                const std::string& file);

/// What [import] of the job says, each key as the change that would write it; none where there is no such
/// table. Only texts and whole numbers: parse_job() says what is wrong with the rest.
Result<std::vector<JobChange>> given_in_job(std::string_view text, const std::string& file);

/// A job that says nothing but the log and the procedure that it is for; empty: not named.
std::string new_job_text(std::string_view log, std::string_view procedure);

}  // namespace soakwright
