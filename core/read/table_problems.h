// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with the table in a log: delimiter, line of the column names, rows, in words.
#pragma once

#include <cstddef>
#include <string>

#include "core/problems/problem.h"

namespace soakwright::table_problems {

// Delimiter and decimal sign. `line` is the first row, from 1.
Problem only_empty_lines(const std::string& path);
Problem no_rows(const std::string& path, std::size_t line);
Problem other_delimiter(const std::string& path, std::size_t line, char given, char found);
Problem other_decimal_sign(const std::string& path, std::size_t line, char given, char found);
Problem too_many_columns(const std::string& path, std::size_t line, std::size_t cells, std::size_t most);
/// Decimal commas make more `cells` than there are `names`.
Problem commas_part_numbers(const std::string& path, std::size_t line, std::size_t cells, std::size_t names);
Problem only_time(const std::string& path, std::size_t line);

// The line of the column names that was given. Lines from 1.
Problem names_behind_rows(const std::string& path, std::size_t given, std::size_t first_row);
Problem no_rows_behind_names(const std::string& path, std::size_t given, std::size_t first_row);
Problem names_do_not_fit(const std::string& path, std::size_t given, std::size_t names, std::size_t cells);
Problem values_in_place_of_names(const std::string& path, std::size_t given);

// The rows.
Problem far_shorter_lines(const std::string& path, std::size_t line);
/// `text` is the line of other names.
Problem another_table(const std::string& path, std::size_t line, const std::string& text);

}  // namespace soakwright::table_problems
