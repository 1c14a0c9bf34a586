// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/job_columns.h"

#include <charconv>

#include "core/record/record_problems.h"
#include "core/units/name_match.h"

namespace soakwright {

Result<std::size_t> find_column(const LogTable& table, const std::string& said, const Job& job,
                                std::size_t line) {
  const std::string wanted = name_to_match(said);
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    if (name_to_match(table.columns[i].header) == wanted || name_to_match(table.columns[i].name) == wanted)
      found.push_back(i);
  if (found.size() == 1) return found.front();
  if (found.size() > 1) {
    std::vector<std::size_t> numbers;
    for (const std::size_t i : found) numbers.push_back(table.columns[i].number);
    return several_such_columns(job, line, said, numbers);
  }
  std::size_t number = 0;
  const auto parsed = std::from_chars(wanted.data(), wanted.data() + wanted.size(), number);
  if (parsed.ec == std::errc{} && parsed.ptr == wanted.data() + wanted.size())
    for (std::size_t i = 0; i < table.columns.size(); ++i)
      if (table.columns[i].number == number) return i;
  return no_such_column(job, line, said, table);
}

Result<std::vector<std::size_t>> columns_of_entries(const LogTable& table, const Job& job) {
  std::vector<std::size_t> columns;
  Problems problems;
  for (const ThermocoupleEntry& entry : job.thermocouples) {
    const auto column = find_column(table, entry.column, job, entry.line);
    if (!column) {
      problems.insert(problems.end(), column.problems().begin(), column.problems().end());
      continue;
    }
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (columns[i] == column.value()) problems.push_back(column_listed_twice(job, entry));
    columns.push_back(column.value());
  }
  if (!problems.empty()) return problems;
  return columns;
}

}  // namespace soakwright
