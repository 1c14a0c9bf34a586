// SPDX-License-Identifier: GPL-3.0-or-later
// Made-up runs with known corners: a programme, a controlled heat balance that follows it, thermocouples with
// their own gain, offset and lag, and a recorder with noise, resolution, gaps and missing readings. One seed,
// one run.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "tests/core/phases/dice.h"
#include "tests/core/phases/heat_balance.h"
#include "tests/core/phases/lookalike.h"
#include "tests/core/phases/programme.h"
#include "tests/core/phases/recorded_channel.h"
#include "tests/core/phases/run.h"
#include "tests/core/phases/true_corners.h"

namespace soakwright::made {

/// What may be drawn.
struct Wishes {
  double duration_least_s = 1200.0;
  double duration_most_s = 4 * 86400.0;
  std::size_t most_rows = 5000;
  std::size_t fewest_channels = 1;
  std::size_t most_channels = 24;
  double most_noise_k = 0.5;
  bool dips = true;
  bool gaps = true;
  bool missing = true;
  double share_of_natural_cooling = 0.4;
  bool lookalikes = true;  ///< real processes that look like a fault of a channel
};

/// The recorder's times: even, with gaps.
inline std::vector<double> recorder_times(Dice& dice, double duration_s, double interval_s, bool with_gaps) {
  std::vector<double> times;
  const auto rows = static_cast<std::size_t>(duration_s / interval_s) + 1;
  times.reserve(rows);
  for (std::size_t r = 0; r < rows; ++r) times.push_back(interval_s * static_cast<double>(r));
  const std::size_t gaps = with_gaps ? dice.below(3) : 0;
  for (std::size_t g = 0; g < gaps; ++g) {
    const double length = std::max(interval_s * dice.between(4.0, 12.0), 0.0);
    if (length > 0.04 * duration_s) continue;
    const double from = dice.between(0.05, 0.95) * duration_s;
    std::erase_if(times, [&](double s) { return s > from && s < from + length; });
  }
  return times;
}

/// A power cut in the first long hold.
inline void cut_power_in_a_hold(Dice& dice, const Run& run, HeatBalance& balance) {
  double at = 0.0;
  for (const Part& part : run.parts) {
    if (part.kind == Phase::Kind::hold && part.seconds > 0.1 * run.duration_s) {
      const double length = std::min({0.1 * part.seconds, dice.between(120.0, 600.0),
                                      balance.time_to_lose(dice.between(5.0, 60.0), part.from_c)});
      const double from = at + part.seconds * dice.between(0.45, 0.55);
      balance.cut_power(from, from + length);
      return;
    }
    at += part.seconds;
  }
}

/// Adds the run's next thermocouple on the work, which loses a share `lost` of its readings; its lag.
inline double add_thermocouple(Dice& dice, Run& run, const std::vector<double>& work_c, double lost,
                               bool lookalikes) {
  const std::vector<double>& times = run.record.times_s;
  const std::size_t c = run.true_c.size();
  const double most_lag_s = std::clamp(run.duration_s / 200.0, 1.0, 300.0);
  const double gain = 1.0 + 0.01 * std::clamp(dice.normal(), -2.0, 2.0) - (dice.chance(0.1) ? 0.05 : 0.0);
  const double offset = 0.5 * dice.normal();
  // Now and then one sits inside a thick wall.
  const bool inside = lookalikes && c > 0 && dice.chance(0.05);
  const double lag_s = inside ? std::min(0.012 * run.duration_s, 420.0) : dice.between(0.0, most_lag_s);
  std::vector<double> clean;
  std::vector<double> shown;
  std::vector<char> missing;
  double felt = work_c.front();
  for (std::size_t r = 0; r < times.size(); ++r) {
    const double dt = r > 0 ? times[r] - times[r - 1] : 0.0;
    if (r > 0 && dt > 0.0) {  // exact first-order lag on a straight line
      const double slope = (work_c[r] - work_c[r - 1]) / dt;
      const double decay = std::exp(-dt / lag_s);
      felt = work_c[r] - slope * lag_s + (felt - work_c[r - 1] + slope * lag_s) * decay;
    }
    clean.push_back(run.ambient_c + gain * (felt - run.ambient_c) + offset);
    missing.push_back(dice.chance(lost) ? 1 : 0);
  }
  if (lookalikes && c > 1 && dice.chance(0.1)) add_lookalike(dice, run, work_c, clean);
  shown.reserve(clean.size());
  for (const double celsius : clean) shown.push_back(celsius + run.noise_k * dice.normal());
  run.true_c.push_back(std::move(clean));
  run.record.channels.push_back(
      channel_of("TC" + std::to_string(c + 1), shown, missing, run.unit, run.places));
  run.shown_c.push_back(std::move(shown));
  run.missing.push_back(std::move(missing));
  return lag_s;
}

/// The noise-free median of the channels, at each row.
inline std::vector<double> median_course(const Run& run) {
  std::vector<double> course;
  for (std::size_t r = 0; r < run.record.times_s.size(); ++r) {
    std::vector<double> here;
    for (const auto& trace : run.true_c) here.push_back(trace[r]);
    std::sort(here.begin(), here.end());
    course.push_back(0.5 * (here[(here.size() - 1) / 2] + here[here.size() / 2]));
  }
  return course;
}

inline Run make_run(std::uint64_t seed, const Wishes& wishes = {}) {
  Dice dice(seed);
  Run run;
  run.seed = seed;
  run.ambient_c = dice.between(5.0, 32.0);
  const double wanted_s = dice.log_between(wishes.duration_least_s, wishes.duration_most_s);
  run.natural_cooling = dice.chance(wishes.share_of_natural_cooling);
  run.parts = random_programme(dice, wanted_s, run.ambient_c, run.natural_cooling);
  for (const Part& part : run.parts) run.duration_s += part.seconds;
  const double finest = std::max(0.5, run.duration_s / static_cast<double>(wishes.most_rows));
  const double interval = dice.log_between(finest, std::max(finest, std::min(300.0, run.duration_s / 120.0)));
  run.record.times_s = recorder_times(dice, run.duration_s, interval, wishes.gaps);

  HeatBalance balance(dice, run.parts, run.ambient_c, run.duration_s, run.natural_cooling);
  if (wishes.dips && dice.chance(0.4)) cut_power_in_a_hold(dice, run, balance);
  std::vector<double> work_c;
  work_c.reserve(run.record.times_s.size());
  for (const double at : run.record.times_s) work_c.push_back(balance.go_to(at));

  const std::size_t channels =
      wishes.fewest_channels + dice.below(wishes.most_channels - wishes.fewest_channels + 1);
  run.unit = dice.chance(0.25) ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
  run.places = dice.chance(0.3) ? 0 : 1;
  run.noise_k = dice.between(0.0, wishes.most_noise_k);
  const double lost = wishes.missing && dice.chance(0.5) ? dice.between(0.0, 0.03) : 0.0;
  std::vector<double> lags_s;
  for (std::size_t c = 0; c < channels; ++c)
    lags_s.push_back(add_thermocouple(dice, run, work_c, lost, wishes.lookalikes));
  run.course_c = median_course(run);
  std::sort(lags_s.begin(), lags_s.end());
  run.lag_s = balance.lag_s() + lags_s[lags_s.size() / 2];
  finish(run.record);
  run.corners = true_corners(run);
  return run;
}

}  // namespace soakwright::made
