// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/readings.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

#include "core/read/cell.h"

namespace soakwright {
namespace {

__extension__ using Wide = __int128;

// What a double is rounded to where sums must be exact: far below any digit of a log, and 1e6 rows still fit
// 64 bits.
constexpr double kDoubleUnit = 1.0 / 4'294'967'296.0;

}  // namespace

DecimalScale DecimalScale::of(TemperatureUnit unit, int decimal_places) {
  const std::int64_t power = power_of_ten(decimal_places);
  switch (unit) {
    case TemperatureUnit::celsius:
      return {1, 0, power};
    case TemperatureUnit::fahrenheit:
      return {5, -160 * power, 9 * power};
    case TemperatureUnit::kelvin: {
      // 273.15 has two places: a coarser column is counted in hundredths.
      const std::int64_t factor = decimal_places < 2 ? power_of_ten(2 - decimal_places) : 1;
      return {factor, -27'315 * (power * factor / 100), power * factor};
    }
  }
  return {1, 0, power};
}

Readings Readings::of_decimals(std::shared_ptr<const std::int32_t[]> units, std::size_t rows,
                               std::size_t missing, DecimalScale scale, TileLayout layout) {
  Readings readings;
  readings.units_ = std::move(units);
  readings.rows_ = rows;
  readings.missing_ = missing;
  readings.scale_ = scale;
  readings.layout_ = layout;
  readings.resolution_k_ = scale.kelvin_per_unit();
  return readings;
}

Readings Readings::of_celsius(std::vector<double> celsius, double resolution_k) {
  Readings readings;
  readings.rows_ = celsius.size();
  readings.missing_ = static_cast<std::size_t>(
      std::count_if(celsius.begin(), celsius.end(), [](double value) { return std::isnan(value); }));
  readings.celsius_ = std::make_shared<const std::vector<double>>(std::move(celsius));
  readings.resolution_k_ = resolution_k;
  return readings;
}

std::optional<double> Readings::celsius(std::size_t row) const {
  if (celsius_) {
    const double value = (*celsius_)[row];
    if (std::isnan(value)) return std::nullopt;
    return value;
  }
  const std::int32_t units = units_at(row);
  if (units == kMissingUnits) return std::nullopt;
  return scale_.celsius(units);
}

void Readings::celsius_at(std::span<const std::size_t> rows, double* out) const {
  if (celsius_) {
    for (const std::size_t row : rows) *out++ = (*celsius_)[row];
    return;
  }
  // Nothing but loads first: each row lies on a line of the cache of its own, and so they come side by side.
  const auto factor = static_cast<double>(scale_.factor);
  const auto offset = static_cast<double>(scale_.offset);
  const auto divisor = static_cast<double>(scale_.divisor);
  for (const std::size_t row : rows) {
    const std::int32_t units = units_at(row);
    *out++ = units == kMissingUnits ? std::numeric_limits<double>::quiet_NaN()
                                    : (units * factor + offset) / divisor;
  }
}

double Readings::difference_k(const Readings& a, std::size_t row_a, const Readings& b, std::size_t row_b) {
  constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
  if (a.celsius_ || b.celsius_)
    return a.celsius(row_a).value_or(kUnknown) - b.celsius(row_b).value_or(kUnknown);
  const std::int64_t first = a.units_at(row_a) * a.scale_.factor + a.scale_.offset;
  const std::int64_t second = b.units_at(row_b) * b.scale_.factor + b.scale_.offset;
  const std::int64_t divisor = std::lcm(a.scale_.divisor, b.scale_.divisor);
  const Wide difference = static_cast<Wide>(first) * (divisor / a.scale_.divisor) -
                          static_cast<Wide>(second) * (divisor / b.scale_.divisor);
  return static_cast<double>(difference) / static_cast<double>(divisor);
}

void Readings::collect(std::size_t first, std::size_t last, std::vector<std::uint32_t>& rows,
                       std::vector<double>& celsius) const {
  if (complete()) {
    const std::size_t before = rows.size();
    rows.resize(before + (last - first));
    std::iota(rows.begin() + static_cast<std::ptrdiff_t>(before), rows.end(),
              static_cast<std::uint32_t>(first));
    celsius.resize(celsius.size() + (last - first));
    return fill_celsius(first, last, celsius.data() + (celsius.size() - (last - first)));
  }
  rows.reserve(rows.size() + (last - first));
  celsius.reserve(celsius.size() + (last - first));
  if (celsius_) {
    for (std::size_t row = first; row < last; ++row) {
      if (std::isnan((*celsius_)[row])) continue;
      rows.push_back(static_cast<std::uint32_t>(row));
      celsius.push_back((*celsius_)[row]);
    }
    return;
  }
  visit_units(first, last, [&](std::size_t row, const std::int32_t* units, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
      if (units[i] == kMissingUnits) continue;
      rows.push_back(static_cast<std::uint32_t>(row + i));
      celsius.push_back(scale_.celsius(units[i]));
    }
  });
}

void Readings::fill_celsius(std::size_t first, std::size_t last, double* out) const {
  if (celsius_) {
    std::copy_n(celsius_->begin() + static_cast<std::ptrdiff_t>(first), last - first, out);
    return;
  }
  // Products and sums of whole numbers this small are exact in a double: the same as DecimalScale::celsius().
  const auto factor = static_cast<double>(scale_.factor);
  const auto offset = static_cast<double>(scale_.offset);
  const auto divisor = static_cast<double>(scale_.divisor);
  visit_units(first, last, [&](std::size_t, const std::int32_t* units, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) out[i] = (units[i] * factor + offset) / divisor;
    out += count;
  });
}

void Readings::collect_units(std::size_t first, std::size_t last, std::vector<std::int64_t>& units) const {
  if (complete() && !celsius_) {
    const std::size_t before = units.size();
    units.resize(before + (last - first));
    std::int64_t* out = units.data() + before;
    visit_units(first, last, [&](std::size_t, const std::int32_t* piece, std::size_t count) {
      out = std::copy_n(piece, count, out);
    });
    return;
  }
  units.reserve(units.size() + (last - first));
  if (celsius_) {
    for (std::size_t row = first; row < last; ++row)
      if (!std::isnan((*celsius_)[row])) units.push_back(std::llround((*celsius_)[row] / kDoubleUnit));
    return;
  }
  visit_units(first, last, [&](std::size_t, const std::int32_t* piece, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i)
      if (piece[i] != kMissingUnits) units.push_back(piece[i]);
  });
}

double Readings::kelvin_per_unit() const { return celsius_ ? kDoubleUnit : scale_.kelvin_per_unit(); }

Readings Readings::corrected(
    std::span<const std::pair<Temperature, TemperatureDifference>> correction) const {
  std::vector<double> values(rows_, std::numeric_limits<double>::quiet_NaN());
  for (std::size_t row = 0; row < rows_; ++row) {
    const auto value = celsius(row);
    if (!value) continue;
    const auto after = std::find_if(correction.begin(), correction.end(),
                                    [&](const auto& point) { return point.first.celsius() >= *value; });
    double added = 0.0;
    if (correction.empty()) {
      added = 0.0;
    } else if (after == correction.begin()) {
      added = after->second.kelvin();
    } else if (after == correction.end()) {
      added = correction.back().second.kelvin();
    } else {
      const auto before = after - 1;
      const double share =
          (*value - before->first.celsius()) / (after->first.celsius() - before->first.celsius());
      added = before->second.kelvin() + share * (after->second.kelvin() - before->second.kelvin());
    }
    values[row] = *value + added;
  }
  return of_celsius(std::move(values), resolution_k_);
}

}  // namespace soakwright
