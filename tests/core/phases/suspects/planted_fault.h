// SPDX-License-Identifier: GPL-3.0-or-later
// One fault planted in one channel of a made-up run, as the recorder would have shown it.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "tests/core/phases/made_run.h"

namespace soakwright::made {

struct PlantedFault {
  Suspect::Code code = Suspect::Code::open;
  std::size_t channel = 0;
  double from_s = 0.0;  ///< first and last row on which it shows
  double to_s = 0.0;
  std::string how;
};

/// Rows on a ramp of the programme from which on the course still moves by 60 K at least: where standing
/// shows.
inline std::vector<std::size_t> ramp_rows(const Run& run) {
  const std::vector<double>& t = run.record.times_s;
  std::vector<std::size_t> rows;
  for (std::size_t r = 5; r + 30 < t.size(); ++r) {
    double at = t[r];
    for (const Part& part : run.parts) {
      if (at <= part.seconds) {
        const double share = at / part.seconds;
        const bool ramp = std::abs(part.to_c - part.from_c) > 100.0;
        if (ramp && share > 0.1 && share < 0.7 && std::abs(run.course_c.back() - run.course_c[r]) > 60.0)
          rows.push_back(r);
        break;
      }
      at -= part.seconds;
    }
  }
  return rows;
}

/// Rows so hot that a fall to the air shows.
inline std::vector<std::size_t> hot_rows(const Run& run, const std::vector<double>& celsius) {
  const std::vector<double>& t = run.record.times_s;
  std::vector<std::size_t> rows;
  for (std::size_t r = 5; r + 30 < t.size(); ++r)
    if (t[r] < 0.9 * t.back() && celsius[r] > run.ambient_c + 180.0) rows.push_back(r);
  return rows;
}

/// Whether the noise shows in the digits that the recorder prints.
inline bool scatters(const Run& run) {
  return run.noise_k >= 0.7 * run.record.channels[0].readings.resolution_k();
}

/// Whether the run can show such a fault at all.
inline bool can_show(const Run& run, Suspect::Code code) {
  const std::size_t channels = run.record.channels.size();
  const auto has = [&](Phase::Kind kind) {
    return std::any_of(run.parts.begin(), run.parts.end(), [&](const Part& part) {
      return part.kind == kind && std::abs(part.to_c - part.from_c) > 100.0;
    });
  };
  switch (code) {
    case Suspect::Code::open:
      return true;  // one channel alone can show it
    case Suspect::Code::noisy:
    case Suspect::Code::reversed:
      return channels >= 2;
    case Suspect::Code::stuck:
      return channels >= 2 && !ramp_rows(run).empty();
    case Suspect::Code::detached:
      return channels >= 2 &&
             std::all_of(run.true_c.begin(), run.true_c.end(),
                         [&](const std::vector<double>& trace) { return !hot_rows(run, trace).empty(); });
    case Suspect::Code::copied:  // where nothing scatters by more than the digit, any two may be equal
      return channels >= 2 && scatters(run);
    case Suspect::Code::clipped:
      return channels >= 2 && scatters(run) && has(Phase::Kind::heat) && has(Phase::Kind::cool);
    case Suspect::Code::spike:
      return run.record.interval_s <= 40.0;
    case Suspect::Code::lag:  // on the way up alone, late is the same as hindmost in a spread
      return channels >= 3 && has(Phase::Kind::heat) && has(Phase::Kind::cool);
  }
  return false;
}

/// Plants faults of all kinds into runs.
class Planter {
 public:
  Planter(Run& run, Dice& dice) : run_(run), dice_(dice), t_(run.record.times_s) {}

  PlantedFault plant(Suspect::Code code) {
    fault_.code = code;
    fault_.channel = dice_.below(run_.record.channels.size());
    switch (code) {
      case Suspect::Code::open:
        open();
        break;
      case Suspect::Code::stuck:
        stuck();
        break;
      case Suspect::Code::reversed:
        reversed();
        break;
      case Suspect::Code::detached:
        detached();
        break;
      case Suspect::Code::noisy:
        noisy();
        break;
      case Suspect::Code::copied:
        copied();
        break;
      case Suspect::Code::clipped:
        clipped();
        break;
      case Suspect::Code::spike:
        spike();
        break;
      case Suspect::Code::lag:
        lag();
        break;
    }
    rebuild();
    if (code == Suspect::Code::stuck) to_where_it_shows();
    return fault_;
  }

 private:
  std::vector<double>& shown() { return run_.shown_c[fault_.channel]; }
  std::vector<char>& missing() { return run_.missing[fault_.channel]; }
  const std::vector<double>& clean() { return run_.true_c[fault_.channel]; }
  double duration() const { return t_.back(); }
  std::size_t row_at(double s) const {
    return std::min(static_cast<std::size_t>(std::lower_bound(t_.begin(), t_.end(), s) - t_.begin()),
                    t_.size() - 1);
  }
  /// Rows [first_, last_] are the fault's.
  void choose(std::size_t first, std::size_t last) {
    first_ = first;
    last_ = last;
    fault_.from_s = t_[first];
    fault_.to_s = t_[last];
  }
  /// A time_range from `first` on, of at least `rows` and `share` of the record; every other one to the end.
  void choose_from(std::size_t first, std::size_t rows, double share, double most_share) {
    const double length = dice_.between(share, most_share) * duration();
    const std::size_t last = std::max(row_at(t_[first] + length), first + rows);
    choose(first, dice_.chance(0.5) ? t_.size() - 1 : std::min(last, t_.size() - 1));
  }

  void open() {
    choose_from(row_at(dice_.between(0.05, 0.85) * duration()), 20, 0.03, 0.3);
    const bool burnout = dice_.chance(0.5);
    fault_.how = burnout ? "burnout value" : "no reading";
    for (std::size_t r = first_; r <= last_; ++r) {
      missing()[r] = burnout ? 0 : 1;
      shown()[r] = 1372.0;
    }
  }

  void stuck() {
    const std::vector<std::size_t> starts = ramp_rows(run_);
    const std::size_t first = starts[dice_.below(starts.size())];
    std::size_t last = first;
    while (last + 1 < t_.size() && std::abs(run_.course_c[last] - run_.course_c[first]) < 60.0) ++last;
    const double later = t_[last] + dice_.between(0.03, 0.3) * duration();
    choose(first, dice_.chance(0.4) ? t_.size() - 1 : row_at(later));
    for (std::size_t r = first_; r <= last_; ++r) {
      shown()[r] = shown()[first_];
      missing()[r] = 0;
    }
  }
  /// What stands shows from the first reading of the same value on.
  void to_where_it_shows() {
    const Readings& readings = run_.record.channels[fault_.channel].readings;
    const double value = *readings.celsius(first_);
    while (first_ > 0 && readings.celsius(first_ - 1) == value) --first_;
    while (last_ + 1 < t_.size() && readings.celsius(last_ + 1) == value) ++last_;
    choose(first_, last_);
  }

  void reversed() {
    // Below -250 there is no reading; a reconnection there would not show as one.
    std::vector<std::size_t> warm;
    for (std::size_t r = 5; r < t_.size() / 2; ++r)
      if (clean()[r] > run_.ambient_c + 80.0 && clean()[r] < 230.0) warm.push_back(r);
    const bool whole = warm.empty() || dice_.chance(0.75);
    choose(whole ? 0 : warm[dice_.below(warm.size())], t_.size() - 1);
    fault_.how = whole ? "from the start" : "reconnected";
    const double head = run_.ambient_c + dice_.between(0.0, 10.0);
    for (std::size_t r = first_; r <= last_; ++r) {
      shown()[r] = 2.0 * head - shown()[r];
      if (shown()[r] < -250.0) missing()[r] = 1;
    }
  }

  void detached() {
    const std::vector<std::size_t> hot = hot_rows(run_, clean());
    const std::size_t first = hot[dice_.below(hot.size())];
    choose_from(first, 30, 0.05, 0.3);
    if (clean()[last_] < run_.ambient_c + 180.0) choose(first, t_.size() - 1);  // nothing to come back to
    const bool jump = dice_.chance(0.2);
    fault_.how = jump ? "jump" : "fall";
    const double higher = dice_.between(60.0, 200.0);
    const double share = dice_.between(0.3, 0.85);
    const double settle = dice_.between(0.0, std::min(120.0, 0.004 * duration()));
    for (std::size_t r = first_; r <= last_; ++r) {
      const double gone =
          settle > 0.0 ? 1.0 - std::exp(-(t_[r] - t_[first_] + run_.record.interval_s) / settle) : 1.0;
      shown()[r] += jump ? higher * gone : -share * gone * (shown()[r] - run_.ambient_c);
    }
  }

  void noisy() {
    const bool whole = dice_.chance(0.2);
    choose_from(whole ? 0 : row_at(dice_.between(0.05, 0.8) * duration()), 40, 0.06, 0.4);
    if (whole) choose(0, t_.size() - 1);
    const double digit = run_.record.channels[0].readings.resolution_k();
    const double noise = std::max({3.0, 8.0 * run_.noise_k, 3.0 * digit}) * dice_.between(1.0, 4.0);
    for (std::size_t r = first_; r <= last_; ++r) shown()[r] += noise * dice_.normal();
  }

  /// The later of two columns shows what the earlier one does, from some row on.
  void copied() {
    fault_.channel = 1 + dice_.below(run_.record.channels.size() - 1);
    const std::size_t of = dice_.below(fault_.channel);
    choose(dice_.chance(0.5) ? 0 : dice_.below(t_.size() / 2), t_.size() - 1);
    for (std::size_t r = first_; r <= last_; ++r) {
      shown()[r] = run_.shown_c[of][r];
      missing()[r] = run_.missing[of][r];
    }
  }

  /// No reading above a level that the channel passes on a ramp, some way below its top.
  void clipped() {
    const auto [lowest, highest] = std::minmax_element(clean().begin(), clean().end());
    const double end_c = *highest - std::max(dice_.between(0.05, 0.4) * (*highest - *lowest), 60.0);
    std::size_t first = t_.size();
    std::size_t last = 0;
    for (std::size_t r = 0; r < t_.size(); ++r) {
      if (shown()[r] < end_c || missing()[r] != 0) continue;
      first = std::min(first, r);
      last = r;
    }
    choose(first, last);
    for (double& celsius : shown()) celsius = std::min(celsius, end_c);
  }

  void spike() {
    const std::size_t rows = 1 + dice_.below(3);
    std::size_t first = 0;
    const auto clear = [&] {  // the readings beside it are there, in rows that follow each other
      if (first < 3) return false;
      for (std::size_t r = first - 2; r < first + rows + 2; ++r)
        if (missing()[r] != 0 || t_[r + 1] - t_[r] > 1.2 * run_.record.interval_s) return false;
      return true;
    };
    while (!clear()) first = 3 + dice_.below(t_.size() - 12);
    choose(first, first + rows - 1);
    const double height = dice_.between(60.0, 200.0) * (dice_.chance(0.5) ? 1.0 : -1.0);
    for (std::size_t r = first_; r <= last_; ++r) shown()[r] += height;
  }

  void lag() {
    choose(0, t_.size() - 1);
    const double late = std::max(dice_.between(0.035, 0.08) * duration(), 8.0 * run_.record.interval_s);
    const std::vector<double> noise = [&] {
      std::vector<double> part;
      for (std::size_t r = 0; r < t_.size(); ++r) part.push_back(shown()[r] - clean()[r]);
      return part;
    }();
    const std::size_t kind = dice_.below(3);
    fault_.how = kind == 0 ? "slow" : kind == 1 ? "late" : "early";
    double felt = clean().front();
    for (std::size_t r = 0; r < t_.size(); ++r) {
      double value = 0.0;
      if (kind == 0) {
        if (r > 0) felt += (clean()[r] - felt) * (1.0 - std::exp(-(t_[r] - t_[r - 1]) / late));
        value = felt;
      } else {
        value = clean()[row_at(std::clamp(t_[r] + (kind == 1 ? -late : late), 0.0, duration()))];
      }
      shown()[r] = value + noise[r];
    }
  }

  void rebuild() {
    Channel& channel = run_.record.channels[fault_.channel];
    channel = channel_of(channel.name, shown(), missing(), run_.unit, run_.places);
  }

  Run& run_;
  Dice& dice_;
  const std::vector<double>& t_;
  PlantedFault fault_;
  std::size_t first_ = 0;
  std::size_t last_ = 0;
};

}  // namespace soakwright::made
