// SPDX-License-Identifier: GPL-3.0-or-later
// How the readings of a column run: the evidence that separates a set point, a cold junction or an output
// from a thermocouple whose name is unclear.
//
// A course is a sample: at most kMostSamples rows, evenly chosen over the record, in the column's own unit.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/read/log_table.h"

namespace soakwright {

struct ColumnCourse {
  std::vector<double> times_s;
  std::vector<double> values;  ///< one for each time; NaN where there is no reading
  double last_digit = 1.0;     ///< of the column, in its unit
};

inline constexpr std::size_t kMostSamples = 2'000;

/// The rows of a sample, ascending. Every course compared with another must be made of the same rows.
std::vector<std::size_t> sampled_rows(std::size_t rows);
ColumnCourse course_of(const LogTable& table, const LogColumn& column, std::span<const double> times_s,
                       std::span<const std::size_t> rows);

/// The fewest straight lines, each within one last digit of its readings, laid one after the other from the
/// first reading on. A set point needs few, readings that scatter need one every few rows.
std::size_t straight_pieces(const ColumnCourse& course);
/// How often the readings turn from rising to falling or back: a programme does so at its few corners,
/// readings that scatter all the time, however coarse their last digit.
std::size_t turns(const ColumnCourse& course);
/// Readings that lie off the line through their neighbours by more than rounding can do.
std::size_t corners(const ColumnCourse& course);
std::size_t readings_in(const ColumnCourse& course);

/// Every reading lies within [low, high]. False if there is none.
bool all_within(const ColumnCourse& course, double low, double high);
/// The highest reading less the lowest; 0 if there is none.
double range_of(const ColumnCourse& course);
/// Few different whole numbers of one digit: states, not measurements.
bool are_states(const ColumnCourse& course);
/// Each reading is one step above the one before, as sampled: a number for each row.
bool counts_rows(const ColumnCourse& course, std::span<const std::size_t> rows);

/// True if `course` moves as `group` does somewhere in the record, or reads about the same most of the time;
/// in a record of a hold alone, in which nothing moves, if it reads a fair share of the same. A thermocouple
/// that is far too cold, comes off or burns open still does until then. `throughout`: it must do so over the
/// whole record.
bool runs_as(const ColumnCourse& course, const ColumnCourse& group, bool throughout);

/// `course` where `other` has readings too.
ColumnCourse where_both_read(ColumnCourse course, const ColumnCourse& other);
/// The median of the courses at each time.
ColumnCourse median_of(std::span<const ColumnCourse> courses);

}  // namespace soakwright
