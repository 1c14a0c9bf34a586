// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/record_problems.h"

#include <fmt/format.h>

#include "core/problems/bad_input.h"

namespace soakwright {
namespace {

Problem in_job(const Job& job, std::size_t line, std::string what, std::string help) {
  return bad_input(job.file, line, std::move(what), std::move(help));
}

std::string names_of(const LogTable& table) {
  constexpr std::size_t kMostNames = 12;
  std::string names;
  for (std::size_t i = 0; i < table.columns.size() && i < kMostNames; ++i)
    names.append(i == 0 ? "" : ", ").append(table.columns[i].name);
  if (table.columns.size() > kMostNames)
    names.append(fmt::format(" and {} more", table.columns.size() - kMostNames));
  return names;
}

/// What a column is instead of a thermocouple's.
std::string what_it_is(const ColumnReason& reason) {
  switch (reason.content) {
    case ColumnContent::set_point:
      return "is a set point";
    case ColumnContent::cold_junction:
      return "is a cold junction";
    case ColumnContent::emf_without_cold_junction:
      return "is in mV without a cold junction";
    case ColumnContent::other_unit:
      return fmt::format("has the unit {}", reason.unit);
    case ColumnContent::text:
      return "is text";
    case ColumnContent::empty:
      return "is empty";
    case ColumnContent::counter:
      return "is a counter";
    case ColumnContent::output:
      return "is an output";
    case ColumnContent::pressure:
      return "is a pressure";
    case ColumnContent::heat_flux:
      return "is a heat flux";
    case ColumnContent::alarm:
      return "is an alarm or event";
    case ColumnContent::none:
    case ColumnContent::other_quantity:
      break;
  }
  return "is another quantity";
}

}  // namespace

Problem too_few_rows(const std::string& path, const LogTable& table) {
  return bad_input(path, table.first_row_line,
                   table.rows() == 0 ? "there is no row" : "there is only one row",
                   "a record needs at least two");
}

Problem no_such_column(const Job& job, std::size_t line, const std::string& said, const LogTable& table) {
  return in_job(job, line, fmt::format("the log has no column '{}'", said),
                fmt::format("it has {}", names_of(table)));
}

Problem several_such_columns(const Job& job, std::size_t line, const std::string& said,
                             const std::vector<std::size_t>& numbers) {
  return in_job(job, line, fmt::format("the log has more than one column '{}'", said),
                fmt::format("name it by its number: {}", fmt::join(numbers, " and ")));
}

Problem column_listed_twice(const Job& job, const ThermocoupleEntry& entry) {
  return in_job(job, entry.line, fmt::format("column '{}' is listed twice", entry.column),
                "leave one of the entries out");
}

Problem column_is_no_thermocouple(const Job& job, std::size_t line, const std::string& said) {
  return in_job(job, line, fmt::format("column '{}' is no thermocouple", said),
                "list it in a [[thermocouple]] first");
}

Problem spare_for_itself(const Job& job, const ThermocoupleEntry& entry) {
  return in_job(job, entry.line, fmt::format("'{}' is named as a spare for itself", entry.column),
                "name the thermocouple that it stands in for");
}

Problem name_of_another_column(const Job& job, const ThermocoupleEntry& entry, std::size_t number) {
  return in_job(job, entry.line,
                fmt::format("`name` \"{}\" is the name of column {} of the log too", *entry.name, number),
                "give each thermocouple a name of its own");
}

Problem unit_in_some_names_only(const std::string& path, std::size_t line, const LogColumn& ending,
                                const LogColumn& another) {
  const char letter = ending.name.back();
  return bad_input(path, line,
                   fmt::format("the name '{}' may end in the unit {}, but '{}' names no unit", ending.name,
                               letter, another.name),
                   fmt::format("give `unit = \"{}\"` (or another: C, F, K) in [import] of the job, for all "
                               "columns without a unit, or `unit` in a [[thermocouple]] for each",
                               letter));
}

Problem unit_for_no_column(const Job& job) {
  return in_job(job, job.reading.unit_line,
                "`unit` in [import] is for temperature columns that name no unit, and every column of the "
                "log names its own",
                "take it out, or give `unit` in the [[thermocouple]] whose unit the log says wrongly");
}

Problem emf_without_cold_junction(const std::string& path, std::size_t line) {
  return bad_input(path, line, "the columns are in mV, and no cold junction is named",
                   "name cold_junction in the job's [[thermocouple]] entries: a column, or a temperature");
}

Problem no_temperatures(const std::string& path, std::size_t line, const std::vector<OtherColumn>& columns) {
  constexpr std::size_t kMostNamed = 4;
  std::string what = "no column holds temperatures";
  for (std::size_t i = 0; i < columns.size() && i < kMostNamed; ++i)
    what.append(fmt::format("{}'{}' {}", i == 0 ? ": " : ", ", columns[i].name, what_it_is(columns[i].why)));
  return bad_input(path, line, std::move(what),
                   "list the thermocouples in a job, or export them with their unit");
}

}  // namespace soakwright
