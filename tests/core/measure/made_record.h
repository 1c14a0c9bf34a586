// SPDX-License-Identifier: GPL-3.0-or-later
// Records made by hand: times and columns of numbers in, a Record out, as if a log had been read.
//
//   MadeRecord::every(60, 11).column("TC1", {20.0, 21.5, ...}).course("TC2", {{0, 20}, {10, 120}}).record();
//
// A value is printed with the column's decimals, as a log would print it; kNoReading is an empty cell.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "core/record/record.h"

namespace soakwright {

inline constexpr double kNoReading = std::numeric_limits<double>::quiet_NaN();

/// Corners of a course of straight lines: minutes from the first row, and °C.
using Knots = std::vector<std::pair<double, double>>;

/// The course at a time in seconds; level before the first corner and after the last.
inline double on_course(const Knots& knots, double t_s) {
  const double minute = t_s / 60.0;
  if (minute <= knots.front().first) return knots.front().second;
  for (std::size_t i = 1; i < knots.size(); ++i) {
    const auto& [from, low] = knots[i - 1];
    const auto& [to, high] = knots[i];
    if (minute <= to) return low + (high - low) * (minute - from) / (to - from);
  }
  return knots.back().second;
}

class MadeRecord {
 public:
  explicit MadeRecord(std::vector<double> times_s) : times_s_(std::move(times_s)) {}
  /// Rows at 0, step, 2·step …
  static MadeRecord every(double step_s, std::size_t rows) {
    std::vector<double> times;
    for (std::size_t row = 0; row < rows; ++row) times.push_back(step_s * static_cast<double>(row));
    return MadeRecord(std::move(times));
  }

  /// An evaluated channel with these readings, one for each row.
  MadeRecord& column(const std::string& name, std::vector<double> values, int decimals = 1,
                     TemperatureUnit unit = TemperatureUnit::celsius) {
    if (values.size() != times_s_.size()) throw std::invalid_argument(name + ": one value for each row");
    Column made;
    made.channel.name = name;
    made.channel.column = columns_.size() + 2;
    made.values = std::move(values);
    made.decimals = decimals;
    made.unit = unit;
    columns_.push_back(std::move(made));
    return *this;
  }
  /// The same along straight lines.
  MadeRecord& course(const std::string& name, const Knots& knots, int decimals = 1) {
    std::vector<double> values;
    for (const double t : times_s_) values.push_back(on_course(knots, t));
    return column(name, std::move(values), decimals);
  }
  /// The channel last added is kept as doubles, as converted or corrected readings are.
  MadeRecord& as_doubles(double resolution_k) {
    columns_.back().resolution_k = resolution_k;
    return *this;
  }

  /// Empty cells in the rows from one time to another, both included.
  MadeRecord& missing(const std::string& name, double from_s, double to_s) {
    std::vector<double>& values = find(name).values;
    for (std::size_t row = 0; row < times_s_.size(); ++row)
      if (times_s_[row] >= from_s && times_s_[row] <= to_s) values[row] = kNoReading;
    return *this;
  }
  MadeRecord& exclusion(const std::string& name, double from_s, double to_s) {
    exclusions_.push_back({index(name), from_s, to_s, "excluded"});
    return *this;
  }
  MadeRecord& spare(const std::string& name, const std::string& spare_for) {
    find(name).channel.role = ThermocoupleRole::spare;
    find(name).channel.spare_for = index(spare_for);
    return *this;
  }
  MadeRecord& role(const std::string& name, ThermocoupleRole role) {
    find(name).channel.role = role;
    return *this;
  }
  MadeRecord& at_edge(const std::string& name) {
    find(name).channel.zone = Zone::edge;
    return *this;
  }
  MadeRecord& at(const std::string& name, double metres) {
    find(name).channel.position_m = metres;
    return *this;
  }
  MadeRecord& on_weld(const std::string& name, const std::string& weld) {
    find(name).channel.weld = weld;
    return *this;
  }
  /// The channel is the job's thermocouple with this number.
  MadeRecord& entry(const std::string& name, std::size_t thermocouple) {
    find(name).channel.entry = thermocouple;
    return *this;
  }
  /// A clock fault: nothing joins this row and the next.
  MadeRecord& broken_after(std::size_t row) {
    breaks_.push_back(row);
    return *this;
  }
  MadeRecord& period(const std::string& name, double from_s, double to_s) {
    periods_.push_back({name, from_s, to_s});
    return *this;
  }
  /// Only these rows are evaluated.
  MadeRecord& time_range(std::size_t first_row, std::size_t end_row) {
    first_row_ = first_row;
    end_row_ = end_row;
    return *this;
  }
  MadeRecord& starts(const LocalTime& start) {
    start_ = start;
    return *this;
  }

  [[nodiscard]] Record record() const {
    Record record;
    record.file = "made.csv";
    record.clock = start_ ? RecorderClock::dated(*start_) : RecorderClock{};
    record.times_s = times_s_;
    record.breaks = breaks_;
    record.exclusions = exclusions_;
    record.periods = periods_;
    record.first_row = first_row_;
    record.end_row = end_row_.value_or(times_s_.size());
    record.interval_s = median_step(record.evaluated_times_s());
    for (const Column& made : columns_) {
      Channel channel = made.channel;
      channel.unit =
          made.unit == TemperatureUnit::fahrenheit ? ChannelUnit::fahrenheit : ChannelUnit::celsius;
      channel.readings = readings_of(made);
      record.channels.push_back(std::move(channel));
    }
    return record;
  }

 private:
  struct Column {
    Channel channel;
    std::vector<double> values;
    int decimals = 1;
    TemperatureUnit unit = TemperatureUnit::celsius;
    std::optional<double> resolution_k;
  };

  [[nodiscard]] std::size_t index(const std::string& name) const {
    for (std::size_t i = 0; i < columns_.size(); ++i)
      if (columns_[i].channel.name == name) return i;
    throw std::invalid_argument("no channel " + name);
  }
  Column& find(const std::string& name) { return columns_[index(name)]; }

  static double median_step(std::span<const double> times) {
    std::vector<double> steps;
    for (std::size_t i = 1; i < times.size(); ++i) steps.push_back(times[i] - times[i - 1]);
    if (steps.empty()) return 0.0;
    std::sort(steps.begin(), steps.end());
    const std::size_t middle = steps.size() / 2;
    return steps.size() % 2 == 1 ? steps[middle] : (steps[middle - 1] + steps[middle]) / 2.0;
  }

  static Readings readings_of(const Column& made) {
    if (made.resolution_k) return Readings::of_celsius(made.values, *made.resolution_k);
    std::shared_ptr<std::int32_t[]> units(new std::int32_t[made.values.size()]);
    std::size_t missing = 0;
    const double power = std::pow(10.0, made.decimals);
    for (std::size_t row = 0; row < made.values.size(); ++row) {
      if (std::isnan(made.values[row])) ++missing;
      units[row] = std::isnan(made.values[row])
                       ? Readings::kMissingUnits
                       : static_cast<std::int32_t>(std::lround(made.values[row] * power));
    }
    return Readings::of_decimals(units, made.values.size(), missing,
                                 DecimalScale::of(made.unit, made.decimals));
  }

  std::vector<double> times_s_;
  std::vector<Column> columns_;
  std::vector<Exclusion> exclusions_;
  std::vector<std::size_t> breaks_;
  std::vector<Period> periods_;
  std::size_t first_row_ = 0;
  std::optional<std::size_t> end_row_;
  std::optional<LocalTime> start_;
};

}  // namespace soakwright
