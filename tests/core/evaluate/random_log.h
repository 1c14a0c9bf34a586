// SPDX-License-Identifier: GPL-3.0-or-later
// Small random heat treatments with what can go wrong in them, and procedures whose limits they are near to.
//
// Readings are whole halves of a degree Celsius and limits whole multiples of five, so that both are short
// decimals in Fahrenheit, too.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/units/local_time.h"
#include "core/units/number_text.h"
#include "core/units/temperature.h"
#include "tests/core/measure/made_record.h"

namespace soakwright {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : random_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(random_() >> 11) * 0x1p-53);
  }
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_() % count); }
  bool chance(double share) { return between(0.0, 1.0) < share; }
  /// About normal: the sum of twelve uniform draws.
  double noise() {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i) sum += between(0.0, 1.0);
    return sum;
  }
  template <typename T>
  T one_of(std::initializer_list<T> list) {
    return list.begin()[below(list.size())];
  }

 private:
  std::mt19937_64 random_;
};

inline double to_multiple(double value, double step) { return std::round(value / step) * step; }

/// Limits in °C, °C/h and s.
struct RandomLimits {
  double above = 300.0;
  double low = 590.0, high = 620.0;
  double rate_max = 100.0, cool_rate_max = 100.0;
  double spread_max = 50.0, hold_spread_max = 30.0;
  double time_min_s = 3600.0;
  double temperature_max = 650.0;
  double gap_max_s = 300.0;
  bool own_interpolate_max = false;  ///< `interpolate_max` is given, so that gap_max does not set it
  bool accumulated = false;
};

struct RandomLog {
  std::vector<double> times_s;
  std::vector<std::vector<double>> columns;  ///< °C; kNoReading is an empty cell
  RandomLimits limits;
};

/// Heat, hold, cool on one to five channels: noise, lag, dips, empty cells, lost rows, a late start, an early
/// end, each now and then.
inline RandomLog random_log(Dice& dice) {
  RandomLog log;
  const double interval_s = dice.one_of({30.0, 60.0, 60.0, 120.0});
  const double rate = dice.between(300.0, 900.0);
  const double cool_rate = dice.between(300.0, 900.0);
  const double top = dice.between(595.0, 618.0);
  const double hold_s = dice.between(1500.0, 4500.0);
  const double start = dice.chance(0.1) ? 350.0 : 150.0;
  const double up_s = (top - start) / rate * 3600.0;
  const double down_s = (top - 200.0) / cool_rate * 3600.0 * (dice.chance(0.1) ? 0.4 : 1.0);
  const double end_s = dice.chance(0.08) ? up_s + 0.7 * hold_s : up_s + hold_s + down_s;
  const std::size_t lost_from =
      dice.chance(0.25) ? dice.below(static_cast<std::size_t>(end_s / interval_s)) : 0;
  const std::size_t lost = lost_from == 0 ? 0 : 1 + dice.below(8);
  for (std::size_t row = 0; interval_s * static_cast<double>(row) < end_s; ++row)
    if (row < lost_from || row >= lost_from + lost)
      log.times_s.push_back(interval_s * static_cast<double>(row));

  const double noise_k = dice.between(0.0, 0.8);
  const std::size_t channels = 1 + dice.below(5);
  for (std::size_t channel = 0; channel < channels; ++channel) {
    const double lag_s = dice.between(0.0, 200.0);
    const double offset = dice.between(-4.0, 4.0);
    const double dip_s = dice.chance(0.12) ? up_s + dice.between(0.1, 0.9) * hold_s : -1e9;
    const double dip_k = dice.between(5.0, 40.0);
    const double dip_width_s = dice.between(60.0, 400.0);
    std::vector<double> values;
    for (const double t : log.times_s) {
      const double late = std::max(0.0, t - lag_s);
      double celsius = std::min(start + rate / 3600.0 * late, top);
      celsius = std::min(celsius, top - cool_rate / 3600.0 * (late - up_s - hold_s));
      celsius -= dip_k * std::max(0.0, 1.0 - std::fabs(t - dip_s) / dip_width_s);
      values.push_back(to_multiple(celsius + offset + noise_k * dice.noise(), 0.5));
    }
    if (dice.chance(0.2)) {
      const std::size_t from = 1 + dice.below(values.size() - 1);
      const std::size_t count = 1 + dice.below(12);
      for (std::size_t row = from; row < std::min(from + count, values.size()); ++row)
        values[row] = kNoReading;
    }
    log.columns.push_back(std::move(values));
  }

  RandomLimits& limits = log.limits;
  limits.rate_max = to_multiple(rate * dice.between(0.95, 1.5), 5.0);
  limits.cool_rate_max = to_multiple(cool_rate * dice.between(0.95, 1.5), 5.0);
  limits.spread_max = to_multiple(dice.between(20.0, 120.0), 5.0);
  limits.hold_spread_max = to_multiple(dice.between(10.0, 60.0), 5.0);
  limits.time_min_s = to_multiple(hold_s * dice.between(0.3, 1.05), 60.0);
  limits.temperature_max = to_multiple(top + dice.between(4.0, 35.0), 5.0);
  limits.gap_max_s = dice.one_of({60.0, 180.0, 300.0, 600.0, 1200.0});
  limits.own_interpolate_max = dice.chance(0.5);
  limits.accumulated = dice.chance(0.3);
  return log;
}

inline Record record_of(const RandomLog& log) {
  MadeRecord made(log.times_s);
  for (std::size_t i = 0; i < log.columns.size(); ++i)
    made.column("TC" + std::to_string(i + 1), log.columns[i]);
  return made.record();
}

/// The procedure as its file, in °C or in °F.
inline std::string procedure_text(const RandomLimits& limits,
                                  TemperatureUnit unit = TemperatureUnit::celsius) {
  const bool fahrenheit = unit == TemperatureUnit::fahrenheit;
  const auto point = [&](double celsius) {
    return number_text(fahrenheit ? celsius * 9.0 / 5.0 + 32.0 : celsius);
  };
  const auto step = [&](double kelvin) { return number_text(fahrenheit ? kelvin * 9.0 / 5.0 : kelvin); };
  const auto seconds = [](double s) { return "\"" + number_text(s) + " s\""; };
  std::string text = "soakwright = \"procedure 1\"\nnumber = \"HTP-900\"\nunit = \"";
  text += fahrenheit ? "F" : "C";
  text += "\"\n[evaluation]\n";
  if (limits.own_interpolate_max) text += "interpolate_max = \"3 min\"\n";
  text += "[record]\ntemperature_max = " + point(limits.temperature_max);
  text += "\ngap_max = " + seconds(limits.gap_max_s);
  text += "\n[[stage]]\nkind = \"heat\"\nabove = " + point(limits.above);
  text += "\nrate_max = " + step(limits.rate_max);
  text += "\nspread_max = " + step(limits.spread_max);
  text += "\n[[stage]]\nkind = \"hold\"\nlow = " + point(limits.low);
  text += "\nhigh = " + point(limits.high);
  text += "\ntime_min = " + seconds(limits.time_min_s);
  text += "\nspread_max = " + step(limits.hold_spread_max);
  if (limits.accumulated) text += "\ncount = \"accumulated\"";
  text += "\n[[stage]]\nkind = \"cool\"\nabove = " + point(limits.above);
  text += "\nrate_max = " + step(limits.cool_rate_max);
  text += "\nspread_max = " + step(limits.spread_max);
  return text + "\n";
}

/// How a log is written down.
struct LogWriting {
  std::int64_t start_ns = 1'933'056'000LL * kNanosecondsPerSecond;  ///< 2031-04-04 00:00:00
  TemperatureUnit unit = TemperatureUnit::celsius;
  std::vector<std::size_t> order;       ///< of the columns; empty: as they are
  std::size_t header_again_before = 0;  ///< a row before which the header is repeated; 0: none
};

inline std::string log_text(const RandomLog& log, const LogWriting& writing) {
  std::vector<std::size_t> order = writing.order;
  if (order.empty())
    for (std::size_t i = 0; i < log.columns.size(); ++i) order.push_back(i);
  const bool fahrenheit = writing.unit == TemperatureUnit::fahrenheit;
  std::string header = "Time";
  for (const std::size_t i : order) {
    header += ",TC" + std::to_string(i + 1);
    header += fahrenheit ? " (°F)" : " (°C)";
  }
  header += '\n';
  std::string text = header;
  for (std::size_t row = 0; row < log.times_s.size(); ++row) {
    if (row != 0 && row == writing.header_again_before) text += header;
    text += LocalTime::of_nanoseconds(writing.start_ns).plus_seconds(log.times_s[row]).iso();
    for (const std::size_t i : order) {
      const double celsius = log.columns[i][row];
      text += ',';
      if (!std::isnan(celsius)) text += fixed_text(fahrenheit ? celsius * 1.8 + 32.0 : celsius, 1);
    }
    text += '\n';
  }
  return text;
}

}  // namespace soakwright
