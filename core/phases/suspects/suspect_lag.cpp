// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_lag.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace soakwright {

namespace {

// Late: by a thirty-sixth of the record, twelve minutes at most (the inside of a 100 mm wall follows with
// about ten: thickness squared over twice the diffusivity of hot steel), and no less than a few readings.
constexpr double kLeastShare = 0.028;
constexpr double kLeastMostS = 720.0;
constexpr double kLeastIntervals = 4.0;
// Delays up to this share of the record are tried, in so many steps.
constexpr double kMostShare = 0.16;
constexpr int kSteps = 32;
// It matters: gain and offset alone leave this much, as a root mean square.
constexpr double kLeastOffK = 4.0;
constexpr double kLeastOffShare = 0.01;
constexpr double kLeastOffNoises = 4.0;
// The delay explains it: this share of that is left, and no more than this share of the range.
constexpr double kMisfitLeftShare = 0.14;
constexpr double kLeftMostShare = 0.03;
// A delay on the way up alone (or down alone) is a spread, and no fault: both together must explain this much
// more. Where the record has only one of them, the delay must set the channel apart by this much on it.
constexpr double kBetterShare = 0.5;
constexpr double kOneWayK = 80.0;
constexpr double kOneWayShare = 0.15;
constexpr std::size_t kSamples = 400;  // more make the fit no better
constexpr std::size_t kFewestSamples = 20;

struct Delayed {
  double off_k = 0.0;  ///< root mean square of own - (a + b * others delayed), with the best a and b
  double gain = 0.0;
};

/// `others` holds the delayed others at each cell of `cells`.
Delayed fit(const ExaminedChannel& examined, const std::vector<std::size_t>& cells,
            const std::vector<double>& others) {
  double x = 0.0;
  double y = 0.0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    x += others[i];
    y += examined.celsius(cells[i]);
  }
  const double n = static_cast<double>(cells.size());
  x /= n;
  y /= n;
  double xx = 0.0;
  double xy = 0.0;
  double yy = 0.0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double dx = others[i] - x;
    const double dy = examined.celsius(cells[i]) - y;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  if (xx <= 0.0) return {std::sqrt(yy / n), 0.0};
  return {std::sqrt(std::max(0.0, yy - xy * xy / xx) / n), xy / xx};
}

/// The others as an unbroken line over the cells: known ones, straight between.
std::vector<double> unbroken(const ExaminedChannel& examined) {
  std::vector<double> line(examined.cells(), 0.0);
  std::size_t last = examined.cells();
  for (std::size_t k = 0; k < examined.cells(); ++k) {
    if (examined.others_known[k] == 0) continue;
    const std::size_t from = last == examined.cells() ? 0 : last + 1;
    for (std::size_t i = from; i < k; ++i) {
      const double share =
          last == examined.cells() ? 1.0 : static_cast<double>(i - last) / static_cast<double>(k - last);
      line[i] = last == examined.cells() ? examined.others_c[k]
                                         : line[last] + share * (examined.others_c[k] - line[last]);
    }
    line[k] = examined.others_c[k];
    last = k;
  }
  if (last < examined.cells())
    for (std::size_t i = last + 1; i < examined.cells(); ++i) line[i] = line[last];
  return line;
}

/// The line a time later; before the record it stands as at its start, after it as at its end.
std::vector<double> shifted(const std::vector<double>& line, const std::vector<std::size_t>& cells,
                            double delay) {
  std::vector<double> values;
  values.reserve(cells.size());
  for (const std::size_t k : cells) {
    const double at = std::clamp(static_cast<double>(k) - delay, 0.0, static_cast<double>(line.size() - 1));
    const auto below = std::min(static_cast<std::size_t>(at), line.size() - 2);
    values.push_back(line[below] + (at - static_cast<double>(below)) * (line[below + 1] - line[below]));
  }
  return values;
}

/// The line as something slow follows it: a first-order lag of `delay` cells.
std::vector<double> slowed(const std::vector<double>& line, const std::vector<std::size_t>& cells,
                           double delay) {
  const double share = 1.0 - std::exp(-1.0 / delay);
  std::vector<double> values;
  values.reserve(cells.size());
  double felt = line.front();
  std::size_t next = 0;
  for (std::size_t k = 0; k < line.size() && next < cells.size(); ++k) {
    felt += (line[k] - felt) * share;
    if (k == cells[next]) {
      values.push_back(felt);
      ++next;
    }
  }
  return values;
}

}  // namespace

std::vector<Suspect> find_lag(const ExaminedChannel& examined) {
  std::vector<std::size_t> cells;
  const std::size_t stride = examined.cells() / kSamples + 1;
  for (std::size_t k = 0; k < examined.cells(); k += stride)
    if (examined.comparable(k)) cells.push_back(k);
  if (cells.size() < kFewestSamples) return {};
  const std::vector<double> line = unbroken(examined);
  const double range = examined.course->range_k;
  const Delayed at_once = fit(examined, cells, shifted(line, cells, 0.0));
  if (at_once.off_k < std::max({kLeastOffK, kLeastOffShare * range, kLeastOffNoises * examined.noise_k}))
    return {};

  Delayed best = at_once;
  std::vector<double> follows;  // the others as the best delay has them
  double late_cells = 0.0;
  const auto offer = [&](std::vector<double> delayed_others, double delay) {
    const Delayed delayed = fit(examined, cells, delayed_others);
    if (delayed.off_k >= best.off_k) return;
    best = delayed;
    late_cells = delay;
    follows = std::move(delayed_others);
  };
  const auto try_delay = [&](double delay) {
    offer(shifted(line, cells, delay), delay);
    if (delay > 0.0) offer(slowed(line, cells, delay), delay);
  };
  const double coarse = kMostShare * static_cast<double>(examined.cells()) / kSteps;
  for (int step = 1; step <= kSteps; ++step) {
    try_delay(coarse * step);
    try_delay(-coarse * step);
  }
  const double around = late_cells;
  for (int step = -3; step <= 3; ++step)
    if (step != 0 && around != 0.0) try_delay(around + 0.25 * coarse * step);
  const double late_s = late_cells * examined.sampled->step_s;
  const double least_s = std::max(std::min(kLeastShare * examined.sampled->duration_s(), kLeastMostS),
                                  kLeastIntervals * examined.record->interval_s);
  if (std::abs(late_s) < least_s || best.gain <= 0.0 || best.off_k > kMisfitLeftShare * at_once.off_k ||
      best.off_k > kLeftMostShare * range + examined.noise_k)
    return {};
  const std::vector<double> plain = shifted(line, cells, 0.0);
  std::vector<double> lower = follows;
  std::vector<double> upper = follows;
  double most_k = 0.0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    lower[i] = std::min(follows[i], plain[i]);
    upper[i] = std::max(follows[i], plain[i]);
    most_k = std::max(most_k, std::abs(follows[i] - plain[i]));
  }
  const double one_way_k = std::min(fit(examined, cells, lower).off_k, fit(examined, cells, upper).off_k);
  if (best.off_k > kBetterShare * one_way_k && most_k < std::max(kOneWayK, kOneWayShare * range)) return {};
  Suspect suspect;
  suspect.channel = examined.index();
  suspect.code = Suspect::Code::lag;
  suspect.from_s = examined.sampled->begin_s;
  suspect.to_s = examined.sampled->end_s;
  suspect.evidence = {.kind = SuspectEvidence::Kind::delay,
                      .change_k = at_once.off_k,
                      .others_k = best.off_k,
                      .seconds = late_s};
  return {suspect};
}

}  // namespace soakwright
