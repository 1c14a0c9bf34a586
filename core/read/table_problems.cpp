// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/table_problems.h"

#include <fmt/format.h>

#include "core/problems/bad_input.h"

namespace soakwright::table_problems {
namespace {

constexpr const char* kGiveLineOfNames = "give the line of the names, or 0 where there is none";

std::string words_of_delimiter(char delimiter) {
  if (delimiter == '\t') return "tab";
  if (delimiter == ' ') return "runs of spaces";
  return fmt::format("'{}'", delimiter);
}

}  // namespace

Problem only_empty_lines(const std::string& path) {
  return bad_input(path, 0, "the file holds only empty lines", "export the log again");
}

Problem no_rows(const std::string& path, std::size_t line) {
  return bad_input(
      path, line, "no rows of time and temperature were found",
      "a log has one line for each time, its cells parted by commas, semicolons, tabs, pipes or spaces");
}

Problem other_delimiter(const std::string& path, std::size_t line, char given, char found) {
  return bad_input(path, line,
                   fmt::format("the delimiter {} was given, but the rows are parted by {}",
                               words_of_delimiter(given), words_of_delimiter(found)),
                   "take the given delimiter back");
}

Problem other_decimal_sign(const std::string& path, std::size_t line, char given, char found) {
  return bad_input(path, line,
                   fmt::format("the decimal sign '{}' was given, but the numbers have '{}'", given, found),
                   "take the given decimal sign back");
}

Problem too_many_columns(const std::string& path, std::size_t line, std::size_t cells, std::size_t most) {
  return bad_input(path, line,
                   fmt::format("the rows have {} cells; a log has at most {} columns", cells, most),
                   "check the delimiter, or export fewer columns");
}

Problem commas_part_numbers(const std::string& path, std::size_t line, std::size_t cells, std::size_t names) {
  return bad_input(
      path, line,
      fmt::format("the row has {} cells under {} names: decimal commas in a file parted by commas", cells,
                  names),
      "export with semicolons, with decimal points, or with the numbers in quotes");
}

Problem only_time(const std::string& path, std::size_t line) {
  return bad_input(path, line, "there is no column besides the time", "a log needs at least one temperature");
}

Problem names_behind_rows(const std::string& path, std::size_t given, std::size_t first_row) {
  return bad_input(
      path, given,
      fmt::format("line {} was given as the line of the column names, but the rows begin at line {}", given,
                  first_row),
      kGiveLineOfNames);
}

Problem no_rows_behind_names(const std::string& path, std::size_t given, std::size_t first_row) {
  return bad_input(path, given,
                   fmt::format("line {} was given as the line of the column names, but no rows follow it; "
                               "the first row is at line {}",
                               given, first_row),
                   "take the given line back or correct it");
}

Problem names_do_not_fit(const std::string& path, std::size_t given, std::size_t names, std::size_t cells) {
  return bad_input(
      path, given,
      names == 1
          ? fmt::format("line {} was given as the line of the column names, but it has 1 cell where the rows "
                        "have {}",
                        given, cells)
          : fmt::format("line {} was given as the line of the column names, but it has {} cells where the "
                        "rows have {}",
                        given, names, cells),
      kGiveLineOfNames);
}

Problem values_in_place_of_names(const std::string& path, std::size_t given) {
  return bad_input(
      path, given,
      fmt::format("line {} was given as the line of the column names, but it holds values", given),
      kGiveLineOfNames);
}

Problem far_shorter_lines(const std::string& path, std::size_t line) {
  return bad_input(path, line, "most lines from here on are far shorter than the first rows",
                   "look whether the file is damaged");
}

Problem another_table(const std::string& path, std::size_t line, const std::string& text) {
  return bad_input(path, line,
                   fmt::format("another table begins here, with other columns or units: '{}'", text),
                   "split the file here");
}

}  // namespace soakwright::table_problems
