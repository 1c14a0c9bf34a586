// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with the time and the dates of a log, in words. Lines and columns from 1.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/reading_settings.h"

namespace soakwright::time_problems {

/// A cell of the first row, under the name of its column.
struct NamedCell {
  std::string name, text;
};
Problem no_time(const std::string& path, std::size_t line, const std::vector<NamedCell>& first_cells);
Problem dates_without_time_of_day(const std::string& path, std::size_t line, std::size_t date_column,
                                  const std::vector<NamedCell>& first_cells);

// What was given.
Problem no_such_time_column(const std::string& path, std::size_t line, const std::string& given,
                            const std::vector<std::string>& columns);
Problem several_such_time_columns(const std::string& path, std::size_t line, const std::string& given);
Problem column_is_no_time(const std::string& path, std::size_t line, const NamedCell& cell);
Problem column_is_not_that_time(const std::string& path, std::size_t line, TimeKind given,
                                const NamedCell& cell);
Problem no_column_is_that_time(const std::string& path, std::size_t line, TimeKind given,
                               const std::string& first_cell);

// What a clock of two parts means: `clock` is the first.
Problem minutes_and_seconds(const std::string& path, std::size_t line, std::string_view clock);
Problem unclear_clock(const std::string& path, std::size_t line, std::string_view clock);

/// Some of `all` lines have no time that can be read: how many, where, and what the first has instead.
struct LinesWithoutTime {
  std::size_t count = 0, all = 0, line = 0;
  std::string first;
};
Problem clocks_of_minutes_and_seconds(const std::string& path, const LinesWithoutTime& lines);
Problem unreadable_times(const std::string& path, const LinesWithoutTime& lines);

// Dates: `date` is as it is written but for the separators.
/// `fitting` are the orders that fit all dates of the file.
Problem no_date_in_given_order(const std::string& path, std::size_t line, FieldOrder given,
                               const std::string& date, const std::vector<FieldOrder>& fitting);
Problem dates_fit_no_order(const std::string& path, std::size_t line, const std::string& date);
Problem date_order_unknown(const std::string& path, std::size_t line, const std::string& date,
                           const std::vector<FieldOrder>& fitting);
Problem too_many_dates(const std::string& path, std::size_t line, std::size_t most);

}  // namespace soakwright::time_problems
