// SPDX-License-Identifier: GPL-3.0-or-later
// What a recorder writes: a channel in the digits of the log, and the steps between its rows.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "core/record/record.h"

namespace soakwright::made {

/// A channel of the log's decimals: `places` after the point, in `unit`.
inline Channel channel_of(const std::string& name, const std::vector<double>& celsius,
                          const std::vector<char>& missing, TemperatureUnit unit, int places) {
  const std::size_t rows = celsius.size();
  std::shared_ptr<std::int32_t[]> units(new std::int32_t[rows]);
  double power = 1.0;
  for (int i = 0; i < places; ++i) power *= 10.0;
  std::size_t lost = 0;
  for (std::size_t r = 0; r < rows; ++r) {
    const double shown = unit == TemperatureUnit::fahrenheit ? celsius[r] * 1.8 + 32.0 : celsius[r];
    units[r] = static_cast<std::int32_t>(std::lround(shown * power));
    if (missing[r] != 0) {
      units[r] = Readings::kMissingUnits;
      ++lost;
    }
  }
  Channel channel;
  channel.name = name;
  channel.unit = unit == TemperatureUnit::fahrenheit ? ChannelUnit::fahrenheit : ChannelUnit::celsius;
  channel.readings = Readings::of_decimals(units, rows, lost, DecimalScale::of(unit, places));
  return channel;
}

/// The interval and the evaluated rows, from the times of the rows.
inline void finish(Record& record) {
  std::vector<double> steps;
  for (std::size_t r = 1; r < record.rows(); ++r) steps.push_back(record.times_s[r] - record.times_s[r - 1]);
  std::sort(steps.begin(), steps.end());
  record.interval_s = steps[steps.size() / 2];
  record.first_row = 0;
  record.end_row = record.rows();
}

}  // namespace soakwright::made
