// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a TOML file, its version line, and the keys and tables in it, in words.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/toml/table_name.h"
#include "core/procedure/toml/toml_tree.h"

namespace soakwright {

/// What a value is, for messages: `"abc"`, `12.5`, `true`, `a list`, `a table`.
std::string described(const TomlValue& value);

/// `Did you mean` with the nearest of `known`, or all of them where none is near; then also the nearest if it
/// is wanted `even_if_far`.
std::string suggestion(std::string_view found, const std::vector<std::string>& known,
                       bool even_if_far = false);

namespace toml_problems {

/// `reason` is the parser's own, in English.
Problem not_toml(const std::string& file, std::size_t line, std::string_view reason);

// The version line. `found` is what is written there.
ProblemWords no_version(TomlFileKind needed, const TomlValue& found);
ProblemWords file_of_another_kind(TomlFileKind needed, TomlFileKind found, const std::string& version);
ProblemWords version_of_another_program(TomlFileKind needed, const TomlValue& found);
ProblemWords unknown_kind_of_file(TomlFileKind needed, const TomlValue& found);

// Keys and tables.
ProblemWords missing_key(std::string_view key, const TableName& table);
ProblemWords unknown_key(std::string_view key, const TableName& table, const std::vector<std::string>& known);
ProblemWords no_limit(const TableName& table, const std::vector<std::string>& limits);
/// Not written as `[key]`.
ProblemWords not_a_table(std::string_view key, const TomlValue& found);
/// Not written as `[[key]]`.
ProblemWords not_a_list_of_tables(std::string_view key, const TomlValue& found);

/// A key of a table and the value that it has there.
struct KeyAndValue {
  std::string_view key;
  const TomlValue& value;
};
ProblemWords not_below(const KeyAndValue& low, const KeyAndValue& high, const TableName& table);
ProblemWords above(const KeyAndValue& low, const KeyAndValue& high, const TableName& table);

}  // namespace toml_problems
}  // namespace soakwright
