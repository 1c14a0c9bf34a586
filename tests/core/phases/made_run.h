// SPDX-License-Identifier: GPL-3.0-or-later
// Made-up runs with known corners: a programme, a controlled heat balance that follows it, thermocouples with
// their own gain, offset and lag, and a recorder with noise, resolution, gaps and missing readings. One seed,
// one run.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright::made {

/// Draws that are the same with every standard library.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * unit(); }
  double log_between(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  bool chance(double share) { return unit() < share; }
  std::size_t below(std::size_t n) {
    return std::min(n - 1, static_cast<std::size_t>(unit() * static_cast<double>(n)));
  }
  double normal() {  // Box and Muller 1958
    const double u = std::max(unit(), 1e-300);
    return std::sqrt(-2.0 * std::log(u)) * std::cos(6.283185307179586 * unit());
  }

 private:
  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  std::mt19937_64 engine_;
};

/// One straight part of the programme.
struct Part {
  Phase::Kind kind = Phase::Kind::idle;
  double seconds = 0.0;
  double from_c = 0.0;
  double to_c = 0.0;
};

/// A corner of the programme, and the time within which the noise-free course bends: from the programme's own
/// corner to where the course has settled at a level, or has left it by 1 K; at least the work's own lag,
/// after which the lines of the course meet.
struct TrueCorner {
  double from_s = 0.0;
  double to_s = 0.0;
  bool sharp = true;  ///< false where natural cooling ebbs away and no corner can be named
};

struct Run {
  std::uint64_t seed = 0;
  Record record;
  std::vector<Part> parts;
  std::vector<TrueCorner> corners;           ///< between the parts
  std::vector<double> course_c;              ///< noise-free median of the channels, at each row
  std::vector<std::vector<double>> true_c;   ///< noise-free, by channel and row
  std::vector<std::vector<double>> shown_c;  ///< with noise, before the recorder's digits, by channel and row
  std::vector<std::vector<char>> missing;
  TemperatureUnit unit = TemperatureUnit::celsius;
  int places = 1;
  double ambient_c = 20.0;
  double noise_k = 0.0;
  bool natural_cooling = false;
  double duration_s = 0.0;
  double lag_s = 0.0;  ///< by which the course follows the programme on a ramp
};

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

inline void finish(Record& record) {
  std::vector<double> steps;
  for (std::size_t r = 1; r < record.rows(); ++r) steps.push_back(record.times_s[r] - record.times_s[r - 1]);
  std::sort(steps.begin(), steps.end());
  record.interval_s = steps[steps.size() / 2];
  record.first_row = 0;
  record.end_row = record.rows();
}

/// A programme of `duration_s`: cold or hot start, one or two holds, perhaps two cycles.
inline std::vector<Part> random_programme(Dice& dice, double duration_s, double ambient_c, bool natural) {
  using Kind = Phase::Kind;
  std::vector<Part> parts;
  double now_c = ambient_c;
  const double top_c = dice.between(350.0, 720.0);
  const auto level = [&](Kind kind, double share) {
    parts.push_back({kind, dice.between(0.6, 1.4) * share * duration_s, now_c, now_c});
  };
  const auto ramp = [&](double to_c, double share) {
    const double seconds = std::min(dice.between(0.6, 1.4) * share * duration_s,
                                    std::abs(to_c - now_c) * 3600.0 / 20.0);  // 20 K/h is the slowest in use
    parts.push_back({to_c > now_c ? Kind::heat : Kind::cool, seconds, now_c, to_c});
    now_c = to_c;
  };
  const bool starts_hot = dice.chance(0.15);
  if (starts_hot) {
    now_c = dice.between(100.0, 300.0);
    level(Kind::hold, 0.12);
  } else if (dice.chance(0.7)) {
    level(Kind::idle, 0.08);
  }
  const int cycles = !natural && dice.chance(0.3) ? 2 : 1;  // left alone, the work would not be cold in time
  for (int cycle = 0; cycle < cycles; ++cycle) {
    if (dice.chance(0.35) && now_c < 90.0) {  // preheat on the way
      ramp(dice.between(110.0, 250.0), 0.1);
      level(Kind::hold, 0.12);
    }
    ramp(top_c - 20.0 * cycle, 0.25);
    level(Kind::hold, 0.2);
    if (!natural && dice.chance(0.2)) {  // a second, lower hold
      ramp(top_c - dice.between(80.0, 200.0), 0.08);
      level(Kind::hold, 0.12);
    }
    const bool last = cycle + 1 == cycles;
    if (last && dice.chance(0.2)) break;  // the record ends in the hold
    ramp(ambient_c + dice.between(5.0, 25.0), 0.3);
    if (!last || (!natural && dice.chance(0.6))) level(Kind::idle, 0.08);
  }
  double total = 0.0;
  for (const Part& part : parts) total += part.seconds;
  if (total > duration_s)
    for (Part& part : parts) part.seconds *= duration_s / total;
  total = std::min(total, duration_s);
  for (Part& part : parts)  // a part of less than a twenty-fifth of the run is asking too much
    if (part.from_c == part.to_c) part.seconds = std::max(part.seconds, 0.05 * total);
  return parts;
}

/// The noise-free temperature of the controlled work at every row: dT/dt = q - (T - ambient)/loss_s, the heat
/// flow q follows the controller's wish with a lag; the controller is proportional and integral.
class HeatBalance {
 public:
  HeatBalance(Dice& dice, const std::vector<Part>& parts, double ambient_c, double duration_s, bool natural)
      : parts_(parts), ambient_c_(ambient_c), t_c_(parts.front().from_c) {
    lag_s_ = std::clamp(duration_s / 600.0, 2.0, 120.0) * dice.between(0.3, 1.0);
    const double damping = dice.between(0.45, 1.2);
    gain_ = 1.0 / (4.0 * damping * damping * lag_s_);
    reset_s_ = lag_s_ * dice.between(8.0, 20.0);
    loss_s_ = duration_s * dice.between(0.1, 0.3);
    double pace = 0.0;
    double top = 0.0;
    for (const Part& part : parts) {
      pace = std::max(pace, std::abs(part.to_c - part.from_c) / part.seconds);
      top = std::max(top, part.to_c);
    }
    most_flow_ = 2.0 * pace + 1.3 * (top - ambient_c) / loss_s_;
    fan_ = natural ? 0.0 : 6.0 * pace / (top - ambient_c);  // blown cool: in proportion to what is left
    flow_ = (t_c_ - ambient_c_) / loss_s_;
    wish_ = flow_;
  }
  /// Seconds without power after which the work has lost `depth_k` at `celsius`.
  [[nodiscard]] double time_to_lose(double depth_k, double celsius) const {
    return lag_s_ + depth_k * loss_s_ / (celsius - ambient_c_);
  }
  void cut_power(double from_s, double to_s) {
    cut_from_s_ = from_s;
    cut_to_s_ = to_s;
  }
  [[nodiscard]] double lag_s() const { return lag_s_; }
  [[nodiscard]] double asked_c(double at_s) const {
    for (const Part& part : parts_) {
      if (at_s <= part.seconds) return part.from_c + (part.to_c - part.from_c) * at_s / part.seconds;
      at_s -= part.seconds;
    }
    return parts_.back().to_c;
  }
  double go_to(double at_s) {
    const auto steps = static_cast<std::size_t>(std::ceil((at_s - now_s_) / (0.2 * lag_s_)));
    const double dt = steps > 0 ? (at_s - now_s_) / static_cast<double>(steps) : 0.0;
    for (std::size_t i = 0; i < steps; ++i) {
      now_s_ += dt;
      const double error = asked_c(now_s_) - t_c_;
      const bool cut = now_s_ >= cut_from_s_ && now_s_ <= cut_to_s_;
      const double wanted = gain_ * error + wish_;
      const double given =
          cut ? 0.0 : std::clamp(wanted, -fan_ * std::max(t_c_ - ambient_c_, 0.0), most_flow_);
      if (!cut && given == wanted) wish_ += gain_ * error * dt / reset_s_;  // no wind-up at the stops
      flow_ += (given - flow_) * (1.0 - std::exp(-dt / lag_s_));
      t_c_ += (flow_ - (t_c_ - ambient_c_) / loss_s_) * dt;
    }
    return t_c_;
  }

 private:
  const std::vector<Part>& parts_;
  double ambient_c_, t_c_, lag_s_ = 0.0, gain_ = 0.0, reset_s_ = 0.0, loss_s_ = 0.0;
  double most_flow_ = 0.0, fan_ = 0.0, flow_ = 0.0, wish_ = 0.0, now_s_ = 0.0;
  double cut_from_s_ = -1.0, cut_to_s_ = -2.0;
};

/// Where the noise-free course bends at each corner of the programme.
inline std::vector<TrueCorner> true_corners(const Run& run) {
  const std::vector<double>& t = run.record.times_s;
  std::vector<TrueCorner> corners;
  double at_s = 0.0;
  for (std::size_t p = 0; p + 1 < run.parts.size(); ++p) {
    at_s += run.parts[p].seconds;
    const double next_s = at_s + run.parts[p + 1].seconds;
    const auto row_at = [&](double s) {
      return std::min(static_cast<std::size_t>(std::lower_bound(t.begin(), t.end(), s) - t.begin()),
                      t.size() - 1);
    };
    TrueCorner corner{at_s, at_s, true};
    const bool arrives = run.parts[p + 1].from_c == run.parts[p + 1].to_c;
    const std::size_t first = row_at(at_s);
    const std::size_t last = row_at(next_s);
    if (arrives) {  // settled: the last time that it is 1 K away from where it rests in the level's second
                    // half
      std::vector<double> rest(run.course_c.begin() + static_cast<std::ptrdiff_t>((first + last) / 2),
                               run.course_c.begin() + static_cast<std::ptrdiff_t>(last) + 1);
      std::sort(rest.begin(), rest.end());
      const double level = rest[rest.size() / 2];
      std::size_t settled = (first + last) / 2;
      while (settled > first && std::abs(run.course_c[settled - 1] - level) <= 1.0) --settled;
      corner.to_s = std::max(at_s, t[settled]);
      corner.sharp = !(run.natural_cooling && run.parts[p].kind == Phase::Kind::cool);
    } else {
      std::size_t left = first;
      while (left < last && std::abs(run.course_c[left] - run.course_c[first]) <= 1.0) ++left;
      corner.to_s = t[left];
    }
    corner.to_s = std::max(corner.to_s, at_s + run.lag_s);
    // A gap over the bend hides it: then anywhere in the gap.
    for (std::size_t r = 0; r + 1 < t.size(); ++r)
      if (t[r + 1] - t[r] > 1.5 * run.record.interval_s && t[r] <= corner.to_s && t[r + 1] >= corner.from_s) {
        corner.from_s = std::min(corner.from_s, t[r]);
        corner.to_s = std::max(corner.to_s, t[r + 1]);
      }
    corners.push_back(corner);
  }
  return corners;
}

/// What real work does to one channel and is no fault: adds it to the channel's noise-free trace.
inline void add_lookalike(Dice& dice, const Run& run, const std::vector<double>& work_c,
                          std::vector<double>& clean) {
  const std::vector<double>& t = run.record.times_s;
  const double kind = dice.between(0.0, 3.0);
  if (kind < 1.0) {  // a zone that stays cooler, by up to an eighth
    const double cooler = dice.between(0.05, 0.12);
    for (double& celsius : clean) celsius -= cooler * (celsius - run.ambient_c);
  } else if (kind < 2.0) {  // behind by up to 50 K while heating, and there again in the hold and in cooling
    const double behind = dice.between(20.0, 50.0);
    const double settle = 0.03 * run.duration_s;
    double pace = 0.0;
    for (const Part& part : run.parts) pace = std::max(pace, (part.to_c - part.from_c) / part.seconds);
    double felt = 0.0;
    for (std::size_t r = 1; r < t.size(); ++r) {
      const double dt = t[r] - t[r - 1];
      const double share = std::clamp((work_c[r] - work_c[r - 1]) / dt / pace, 0.0, 1.0);
      felt += (share - felt) * (1.0 - std::exp(-dt / settle));
      clean[r] -= behind * felt;
    }
  } else {  // weld runs that pass it in the preheat
    double from = 0.0;
    for (const Part& part : run.parts) {
      const bool preheat = part.kind == Phase::Kind::hold && part.from_c < 260.0;
      const int passes = preheat && run.duration_s > 7200.0 ? static_cast<int>(part.seconds / 900.0) : 0;
      for (int pass = 0; pass < std::min(passes, 12); ++pass) {
        const double at = from + dice.between(0.05, 0.9) * part.seconds;
        const double height = dice.between(30.0, 150.0);
        const double fade = dice.between(60.0, 240.0);
        for (std::size_t r = 0; r < t.size(); ++r)
          if (t[r] >= at) clean[r] += height * std::exp(-(t[r] - at) / fade);
      }
      from += part.seconds;
    }
  }
}

inline Run make_run(std::uint64_t seed, const Wishes& wishes = {}) {
  Dice dice(seed);
  Run run;
  run.seed = seed;
  const double ambient_c = dice.between(5.0, 32.0);
  run.ambient_c = ambient_c;
  const double wanted_s = dice.log_between(wishes.duration_least_s, wishes.duration_most_s);
  run.natural_cooling = dice.chance(wishes.share_of_natural_cooling);
  run.parts = random_programme(dice, wanted_s, ambient_c, run.natural_cooling);
  for (const Part& part : run.parts) run.duration_s += part.seconds;
  const double finest = std::max(0.5, run.duration_s / static_cast<double>(wishes.most_rows));
  const double interval = dice.log_between(finest, std::max(finest, std::min(300.0, run.duration_s / 120.0)));

  // The recorder's times: even, with gaps.
  std::vector<double>& times = run.record.times_s;
  const auto rows = static_cast<std::size_t>(run.duration_s / interval) + 1;
  times.reserve(rows);
  for (std::size_t r = 0; r < rows; ++r) times.push_back(interval * static_cast<double>(r));
  const std::size_t gaps = wishes.gaps ? dice.below(3) : 0;
  for (std::size_t g = 0; g < gaps; ++g) {
    const double length = std::max(interval * dice.between(4.0, 12.0), 0.0);
    if (length > 0.04 * run.duration_s) continue;
    const double from = dice.between(0.05, 0.95) * run.duration_s;
    std::erase_if(times, [&](double s) { return s > from && s < from + length; });
  }

  // The work, with a power cut in the longest hold now and then.
  HeatBalance balance(dice, run.parts, ambient_c, run.duration_s, run.natural_cooling);
  if (wishes.dips && dice.chance(0.4)) {
    double at = 0.0;
    for (const Part& part : run.parts) {
      if (part.kind == Phase::Kind::hold && part.seconds > 0.1 * run.duration_s) {
        const double length = std::min({0.1 * part.seconds, dice.between(120.0, 600.0),
                                        balance.time_to_lose(dice.between(5.0, 60.0), part.from_c)});
        const double from = at + part.seconds * dice.between(0.45, 0.55);
        balance.cut_power(from, from + length);
        break;
      }
      at += part.seconds;
    }
  }
  std::vector<double> work_c;
  work_c.reserve(times.size());
  std::vector<double> lags_s;
  for (const double at : times) work_c.push_back(balance.go_to(at));

  // The thermocouples.
  const std::size_t channels =
      wishes.fewest_channels + dice.below(wishes.most_channels - wishes.fewest_channels + 1);
  const double most_lag_s = std::clamp(run.duration_s / 200.0, 1.0, 300.0);
  run.unit = dice.chance(0.25) ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
  run.places = dice.chance(0.3) ? 0 : 1;
  run.noise_k = dice.between(0.0, wishes.most_noise_k);
  const double lost = wishes.missing && dice.chance(0.5) ? dice.between(0.0, 0.03) : 0.0;
  for (std::size_t c = 0; c < channels; ++c) {
    const double gain = 1.0 + 0.01 * std::clamp(dice.normal(), -2.0, 2.0) - (dice.chance(0.1) ? 0.05 : 0.0);
    const double offset = 0.5 * dice.normal();
    // Now and then one sits inside a thick wall.
    const bool inside = wishes.lookalikes && c > 0 && dice.chance(0.05);
    const double lag_s = inside ? std::min(0.012 * run.duration_s, 420.0) : dice.between(0.0, most_lag_s);
    lags_s.push_back(lag_s);
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
      clean.push_back(ambient_c + gain * (felt - ambient_c) + offset);
      missing.push_back(dice.chance(lost) ? 1 : 0);
    }
    if (wishes.lookalikes && c > 1 && dice.chance(0.1)) add_lookalike(dice, run, work_c, clean);
    shown.reserve(clean.size());
    for (const double celsius : clean) shown.push_back(celsius + run.noise_k * dice.normal());
    run.true_c.push_back(std::move(clean));
    run.record.channels.push_back(
        channel_of("TC" + std::to_string(c + 1), shown, missing, run.unit, run.places));
    run.shown_c.push_back(std::move(shown));
    run.missing.push_back(std::move(missing));
  }
  for (std::size_t r = 0; r < times.size(); ++r) {
    std::vector<double> here;
    for (const auto& trace : run.true_c) here.push_back(trace[r]);
    std::sort(here.begin(), here.end());
    run.course_c.push_back(0.5 * (here[(here.size() - 1) / 2] + here[here.size() / 2]));
  }
  std::sort(lags_s.begin(), lags_s.end());
  run.lag_s = balance.lag_s() + lags_s[lags_s.size() / 2];
  finish(run.record);
  run.corners = true_corners(run);
  return run;
}

}  // namespace soakwright::made
