// SPDX-License-Identifier: GPL-3.0-or-later
// Records drawn by hand: straight lines through given points, with noise and whatever is laid on top.
#pragma once

#include <cmath>
#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "tests/core/phases/made_run.h"

namespace soakwright::made {

struct Drawing {
  std::vector<std::pair<double, double>> points;  ///< seconds, Celsius; straight lines between
  double interval_s = 60.0;
  std::size_t channels = 6;
  double noise_k = 0.0;
  std::uint64_t seed = 1;
  TemperatureUnit unit = TemperatureUnit::celsius;
  int places = 1;
  double channel_step_k = 0.0;  ///< channel c reads this much times c higher, in proportion to the rise
  std::function<double(double seconds)> on_top;  ///< added to every channel
  std::function<bool(double seconds)> left_out;  ///< rows that the recorder did not write
  std::function<double(std::size_t, double, double)>
      altered;  ///< channel, seconds, Celsius: what it reads instead; NaN is no reading
};

inline double on_lines(const std::vector<std::pair<double, double>>& points, double at_s) {
  for (std::size_t i = 1; i < points.size(); ++i)
    if (at_s <= points[i].first) {
      const double share = (at_s - points[i - 1].first) / (points[i].first - points[i - 1].first);
      return points[i - 1].second + share * (points[i].second - points[i - 1].second);
    }
  return points.back().second;
}

inline Record draw(const Drawing& drawing) {
  Record record;
  for (std::size_t i = 0; static_cast<double>(i) * drawing.interval_s <= drawing.points.back().first; ++i) {
    const double at_s = static_cast<double>(i) * drawing.interval_s;
    if (!drawing.left_out || !drawing.left_out(at_s)) record.times_s.push_back(at_s);
  }
  Dice dice(drawing.seed);
  for (std::size_t c = 0; c < drawing.channels; ++c) {
    std::vector<double> celsius;
    std::vector<char> missing;
    for (const double at_s : record.times_s) {
      double value = on_lines(drawing.points, at_s) + (drawing.on_top ? drawing.on_top(at_s) : 0.0);
      value += drawing.channel_step_k * static_cast<double>(c) * (value - 20.0) / 600.0;
      if (drawing.altered) value = drawing.altered(c, at_s, value);
      const double noise_k = drawing.noise_k * dice.normal();
      missing.push_back(std::isnan(value) ? 1 : 0);
      celsius.push_back(std::isnan(value) ? 0.0 : value + noise_k);
    }
    record.channels.push_back(
        channel_of("TC" + std::to_string(c + 1), celsius, missing, drawing.unit, drawing.places));
  }
  finish(record);
  return record;
}

}  // namespace soakwright::made
