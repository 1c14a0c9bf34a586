// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/time_problems.h"

#include <fmt/format.h>

#include "core/problems/bad_input.h"
#include "core/problems/command_line_problems.h"

namespace soakwright::time_problems {
namespace {

constexpr const char* kWhatTimeIsNeeded =
    "a log needs a column of dates with times, times of day, or elapsed s, min or h";
constexpr const char* kTakeTimeBack = "take what was given back, or give another column or kind of time";

std::string listed(const std::vector<NamedCell>& cells) {
  std::string out;
  for (const NamedCell& cell : cells)
    out += fmt::format("{}'{}' {}", out.empty() ? "" : ", ", cell.name, cell.text);
  return out;
}

/// "dmy or mdy"
std::string listed(const std::vector<FieldOrder>& orders) {
  std::string out;
  for (const FieldOrder order : orders) out += fmt::format("{}{}", out.empty() ? "" : " or ", name_of(order));
  return out;
}

}  // namespace

Problem no_time(const std::string& path, std::size_t line, const std::vector<NamedCell>& first_cells) {
  return bad_input(path, line,
                   fmt::format("no column holds the time; the first row begins with {}", listed(first_cells)),
                   kWhatTimeIsNeeded);
}

Problem dates_without_time_of_day(const std::string& path, std::size_t line, std::size_t date_column,
                                  const std::vector<NamedCell>& first_cells) {
  return bad_input(path, line,
                   fmt::format("column {} holds dates, but no column the time of day; the first row begins "
                               "with {}",
                               date_column, listed(first_cells)),
                   kWhatTimeIsNeeded);
}

Problem no_such_time_column(const std::string& path, std::size_t line, const std::string& given,
                            const std::vector<std::string>& columns) {
  std::string names;
  for (const std::string& column : columns) names += (names.empty() ? "" : ", ") + column;
  return bad_input(
      path, line,
      fmt::format("the time column '{}' was given, but the file has the columns {}", given, names),
      "name it by its header or by its number, from 1");
}

Problem several_such_time_columns(const std::string& path, std::size_t line, const std::string& given) {
  return bad_input(
      path, line,
      fmt::format("the time column '{}' was given, but the file has more than one of that name", given),
      "name it by its header or by its number, from 1");
}

Problem column_is_no_time(const std::string& path, std::size_t line, const NamedCell& cell) {
  return bad_input(
      path, line,
      fmt::format("the time was given as column '{}', but its first cell is '{}'", cell.name, cell.text),
      kTakeTimeBack);
}

Problem column_is_not_that_time(const std::string& path, std::size_t line, TimeKind given,
                                const NamedCell& cell) {
  return bad_input(path, line,
                   fmt::format("the time was given as '{}' in column '{}', but its first cell is '{}'",
                               name_of(given), cell.name, cell.text),
                   kTakeTimeBack);
}

Problem no_column_is_that_time(const std::string& path, std::size_t line, TimeKind given,
                               const std::string& first_cell) {
  return bad_input(path, line,
                   fmt::format("the time was given as '{}', but no column can be that; the first row begins "
                               "with '{}'",
                               name_of(given), first_cell),
                   kTakeTimeBack);
}

Problem minutes_and_seconds(const std::string& path, std::size_t line, std::string_view clock) {
  return bad_input(path, line, fmt::format("the time '{}' has minutes and seconds and no hours", clock),
                   "export the log with hours, minutes and seconds");
}

Problem unclear_clock(const std::string& path, std::size_t line, std::string_view clock) {
  return bad_input(
      path, line, fmt::format("the time '{}' may be minutes and seconds, or hours and minutes", clock),
      "export the log with hours, minutes and seconds; or, where these are hours and minutes, write "
      "`time = \"elapsed h:mm:ss\"` or `time = \"time of day\"` in [import] of a job");
}

Problem clocks_of_minutes_and_seconds(const std::string& path, const LinesWithoutTime& lines) {
  return bad_input(path, lines.line,
                   fmt::format("{} of {} lines have times that are no hours and minutes, the first: '{}'; "
                               "minutes and seconds?",
                               lines.count, lines.all, lines.first),
                   "export the log with hours, minutes and seconds");
}

Problem unreadable_times(const std::string& path, const LinesWithoutTime& lines) {
  return bad_input(
      path, lines.line,
      fmt::format("{} of {} lines have no readable time, the first: '{}'", lines.count, lines.all,
                  lines.first),
      "name the column of the time and its kind with `time_column` and `time` in [import] of a job, or "
      "export the log again");
}

Problem no_date_in_given_order(const std::string& path, std::size_t line, FieldOrder given,
                               const std::string& date, const std::vector<FieldOrder>& fitting) {
  return bad_input(
      path, line,
      fitting.empty()
          ? fmt::format("the date order {} was given, but {} is no date in it", name_of(given), date)
          : fmt::format("the date order {} was given, but {} is no date in it; the file's dates fit {}",
                        name_of(given), date, listed(fitting)),
      "leave the order out or correct it");
}

Problem dates_fit_no_order(const std::string& path, std::size_t line, const std::string& date) {
  return bad_input(path, line,
                   fmt::format("the dates fit no order: {} is no date in the order of those before", date),
                   "look whether files of two recorders were joined");
}

Problem date_order_unknown(const std::string& path, std::size_t line, const std::string& date,
                           const std::vector<FieldOrder>& fitting) {
  return helped_by(bad_input(path, line,
                             fmt::format("the date {} can be read as {}, and nothing in the file tells which",
                                         date, listed(fitting)),
                             {}),
                   CommandLineHelp::say_date_order);
}

Problem too_many_dates(const std::string& path, std::size_t line, std::size_t most) {
  return bad_input(path, line, fmt::format("the rows have more than {} different dates", most),
                   "look for damaged time stamps, or split the file");
}

}  // namespace soakwright::time_problems
