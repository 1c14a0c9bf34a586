// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/column_readings.h"

#include <cmath>
#include <limits>
#include <utility>

#include "core/read/fast/hot_loops.h"
#include "core/record/its90_reference.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr double kLowestC = -273.15;
constexpr double kHighestC = 1820.0;
constexpr double kMissing = std::numeric_limits<double>::quiet_NaN();

TemperatureUnit temperature_unit(ChannelUnit unit) {
  switch (unit) {
    case ChannelUnit::fahrenheit:
      return TemperatureUnit::fahrenheit;
    case ChannelUnit::kelvin:
      return TemperatureUnit::kelvin;
    case ChannelUnit::celsius:
    case ChannelUnit::millivolt:
      break;
  }
  return TemperatureUnit::celsius;
}

bool in_range(double celsius) { return celsius >= kLowestC && celsius <= kHighestC; }

void note(LineIssue& line_issue, const LogTable& table, std::size_t row, double printed) {
  if (line_issue.count++ == 0) {
    line_issue.line = table.lines.line_of(row);
    line_issue.text = number_text(printed);
  }
}

double power_of(int places) { return std::pow(10.0, places); }

ColumnReadings of_doubles(const LogTable& table, LogColumn& column, ChannelUnit unit) {
  ColumnReadings out;
  std::vector<double> celsius = std::move(column.wide);
  column.wide.clear();
  const TemperatureUnit scale = temperature_unit(unit);
  for (std::size_t row = 0; row < celsius.size(); ++row) {
    if (std::isnan(celsius[row])) continue;
    const double value = Temperature::of(celsius[row], scale).celsius();
    if (!in_range(value)) note(out.out_of_range, table, row, celsius[row]);
    celsius[row] = in_range(value) ? value : kMissing;
  }
  const double resolution = TemperatureDifference::of(1.0 / power_of(column.places), scale).kelvin();
  out.readings = Readings::of_celsius(std::move(celsius), resolution);
  find_extremes(out);
  return out;
}

}  // namespace

void find_extremes(ColumnReadings& column) {
  column.min_c.reset();
  column.max_c.reset();
  for (std::size_t row = 0; row < column.readings.rows(); ++row) {
    const auto value = column.readings.celsius(row);
    if (!value) continue;
    if (!column.min_c || *value < *column.min_c) column.min_c = value;
    if (!column.max_c || *value > *column.max_c) column.max_c = value;
  }
}

ColumnReadings degrees_of(LogTable& table, LogColumn& column, ChannelUnit unit) {
  if (!column.wide.empty()) return of_doubles(table, column, unit);
  ColumnReadings out;
  const ColumnStore& store = *table.store;
  const DecimalScale scale = DecimalScale::of(temperature_unit(unit), column.places);
  const double power = power_of(column.places);
  const auto celsius_of = [&](double printed) { return scale.celsius(std::llround(printed * power)); };
  std::size_t numbers = column.numbers;
  double lowest = column.lowest;
  double highest = column.highest;
  if (numbers != 0 && (!in_range(celsius_of(column.lowest)) || !in_range(celsius_of(column.highest)))) {
    Extremes rest;
    store.visit(column.store_column, 0, table.rows(),
                [&](std::size_t first, std::size_t count, std::int32_t* units) {
                  for (std::size_t i = 0; i < count; ++i) {
                    if (units[i] == ColumnStore::kMissing || in_range(scale.celsius(units[i]))) continue;
                    note(out.out_of_range, table, first + i, units[i] / power);
                    units[i] = ColumnStore::kMissing;
                  }
                  hot_loops().find_extremes(units, count, rest);
                });
    numbers = rest.there;
    lowest = rest.low / power;
    highest = rest.high / power;
  }
  out.readings = Readings::of_decimals({table.store, store.column(column.store_column)}, table.rows(),
                                       table.rows() - numbers, scale,
                                       {store.row_shift(), store.row_mask(), store.tile_stride()});
  if (numbers != 0) {
    out.min_c = celsius_of(lowest);
    out.max_c = celsius_of(highest);
  }
  return out;
}

ColumnReadings degrees_of_emf(const LogTable& table, const LogColumn& column, ThermocoupleType type,
                              const std::vector<double>& cold_c) {
  ColumnReadings out;
  const double power = power_of(column.places);
  std::vector<double> celsius(table.rows(), kMissing);
  double near = 20.0;
  double sum = 0.0;
  std::size_t known = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double mv = table.number(column, row, power);
    const double cold = cold_c.size() == 1 ? cold_c.front() : cold_c[row];
    if (std::isnan(mv) || std::isnan(cold)) continue;
    const auto cold_mv = emf_mv(type, cold);
    const auto hot = cold_mv ? celsius_of_emf(type, mv + *cold_mv, near) : std::nullopt;
    if (!hot) {
      note(out.out_of_range, table, row, mv);
      continue;
    }
    celsius[row] = near = *hot;
    sum += *hot;
    ++known;
  }
  // The last digit in kelvin where the column mostly is.
  double resolution = 0.0;
  if (known != 0) {
    const double slope = emf_slope_mv_per_k(type, sum / static_cast<double>(known));
    if (slope > 0.0) resolution = 1.0 / power / slope;
  }
  out.readings = Readings::of_celsius(std::move(celsius), resolution);
  find_extremes(out);
  return out;
}

}  // namespace soakwright
