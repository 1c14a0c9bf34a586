// SPDX-License-Identifier: GPL-3.0-or-later
// Edits in the text of a job: a key set, replaced or taken out at the place that the parser reports.
//
// Comments, order and line ends of everything else stay as they are, to the byte. Each edit gives the whole
// new text; what it means is parse_job()'s to say (job_file.h). A text that is not TOML is a problem.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/problems/problem.h"

namespace soakwright {

/// A column by everything that an entry may call it: its header cell, its name without unit, its number.
/// The first is what a new entry calls it.
struct ColumnNames {
  std::vector<std::string> names;
  bool operator==(const ColumnNames&) const = default;
};

/// A new entry of a list, `[[exclude]]` say, behind those that there are: its keys in their order, values as
/// text. A moment that is a plain number is written as one.
struct AddedEntry {
  std::string list;
  std::vector<std::pair<std::string, std::string>> keys;
  bool operator==(const AddedEntry&) const = default;
};

/// One key of the table `table`, or of the [[thermocouple]] entry of `column`; no value takes it out. Or,
/// where `added` is given, an entry of a list; or, where `whole` is given, the whole text.
struct JobChange {
  std::optional<ColumnNames> column;
  std::string key;
  std::optional<std::string> value;  ///< as text; a number, date or moment of [import] is written as one
  std::optional<AddedEntry> added = std::nullopt;
  std::optional<std::string> whole = std::nullopt;
  std::string table = "import";  ///< empty: the keys before every table
  bool operator==(const JobChange&) const = default;
};

/// `text` with the change; `file` names it in problems.
Result<std::string> changed_job(std::string_view text, const JobChange& change, const std::string& file);
/// One after the other.
Result<std::string> changed_job(std::string_view text, const std::vector<JobChange>& changes,
                                const std::string& file);

/// What [import] of the job says, each key as the change that would write it; none where there is no such
/// table. Texts, whole numbers and dates: parse_job() says what is wrong with the rest.
Result<std::vector<JobChange>> given_in_job(std::string_view text, const std::string& file);

/// A job that says nothing but the log and the procedure that it is for; empty: not named.
std::string new_job_text(std::string_view log, std::string_view procedure);

}  // namespace soakwright
