// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/readings/sudden_steps.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <limits>

#include "core/phases/robust.h"

namespace soakwright {

namespace {

// Sudden: within three minutes, or half a hundredth of a short record.
constexpr double kSuddenS = 180.0;
constexpr double kSuddenShare = 0.005;
// What the others do within this time around is no surprise: work follows by its own lag.
constexpr double kSlackShare = 0.02;
constexpr double kSlackMostS = 1200.0;
// A channel nearer to the heat may go this much faster than the others' fastest.
constexpr double kFaster = 1.5;
constexpr double kMarginK = 15.0;
// A step is at least this, and this share of the record's range: less is a draught.
constexpr double kLeastJumpK = 20.0;
constexpr double kLeastJumpShare = 0.03;
constexpr double kJumpNoises = 12.0;
// A row that makes this share of the step at once is its onset.
constexpr double kAtOnce = 0.3;
// Cells before a step that tell how far apart it was.
constexpr std::size_t kCellsBefore = 8;

/// Lowest and highest of `values` within `reach` places of each place; only what is known counts.
struct Envelope {
  std::vector<double> low;
  std::vector<double> high;
};

Envelope envelope_of(const std::vector<double>& values, const std::vector<char>& known, std::size_t reach) {
  const std::size_t n = values.size();
  Envelope envelope{std::vector<double>(n, 0.0),
                    std::vector<double>(n, 0.0)};  // standing still is no surprise
  std::deque<std::size_t> lowest;
  std::deque<std::size_t> highest;
  std::size_t next = 0;
  for (std::size_t k = 0; k < n; ++k) {
    for (; next < n && next <= k + reach; ++next) {
      if (known[next] == 0) continue;
      while (!lowest.empty() && values[lowest.back()] >= values[next]) lowest.pop_back();
      while (!highest.empty() && values[highest.back()] <= values[next]) highest.pop_back();
      lowest.push_back(next);
      highest.push_back(next);
    }
    while (!lowest.empty() && lowest.front() + reach < k) lowest.pop_front();
    while (!highest.empty() && highest.front() + reach < k) highest.pop_front();
    if (!lowest.empty()) envelope.low[k] = std::min(0.0, values[lowest.front()]);
    if (!highest.empty()) envelope.high[k] = std::max(0.0, values[highest.front()]);
  }
  return envelope;
}

/// How far each change over `width` cells lies outside what the others do; 0 where it does not; empty where
/// none does.
std::vector<double> surprises_of(const ExaminedChannel& examined, std::size_t width) {
  const std::size_t n = examined.cells() > width ? examined.cells() - width : 0;
  const double least = least_jump_k(examined);
  const auto own_change = [&](std::size_t k) { return examined.celsius(k + width) - examined.celsius(k); };
  const auto change_of_others = [&](std::size_t k) {
    return examined.others_c[k + width] - examined.others_c[k];
  };
  // Most channels never leave the others by so much: then what these do around needs no looking.
  std::vector<std::size_t> leaps;
  for (std::size_t k = 0; k < n; ++k)
    if (std::abs(own_change(k) - change_of_others(k)) >= least && examined.comparable(k) &&
        examined.comparable(k + width))
      leaps.push_back(k);
  if (leaps.empty()) return {};

  std::vector<double> others(n);
  std::vector<char> known(n);
  for (std::size_t k = 0; k < n; ++k) {
    known[k] = examined.others_known[k] != 0 && examined.others_known[k + width] != 0 ? 1 : 0;
    if (known[k] != 0) others[k] = change_of_others(k);
  }
  const double slack_s = std::min(kSlackShare * examined.sampled->duration_s(), kSlackMostS);
  const Envelope envelope = envelope_of(others, known, examined.cells_in(slack_s, 2 * width));
  std::vector<double> surprises(n);
  for (const std::size_t k : leaps) {
    const double own = own_change(k);
    const double high = kFaster * envelope.high[k] + kMarginK;
    const double low = kFaster * envelope.low[k] - kMarginK;
    surprises[k] = own > high ? own - high : own < low ? own - low : 0.0;
  }
  return surprises;
}

}  // namespace

double least_jump_k(const ExaminedChannel& examined) {
  return std::max({kLeastJumpK, kLeastJumpShare * examined.course->range_k, kJumpNoises * examined.noise_k});
}

double onset_of_excursion(const ExaminedChannel& examined, double from_s, double to_s, double before_k,
                          double jump_k) {
  const RowsNear rows = rows_near(examined, from_s, to_s);
  if (rows.apart_k.empty()) return to_s;
  const double sign = jump_k < 0.0 ? -1.0 : 1.0;
  const double noise = 1.5 * examined.noise_k;  // a row is noisier than a cell of three
  const double least = std::max({5.0 * noise, 0.1 * std::abs(jump_k), 1.5 * examined.digit_k});
  const auto away = [&](std::size_t i) { return sign * (rows.apart_k[i] - before_k); };
  const double at_once = kAtOnce * std::abs(jump_k);
  for (std::size_t i = 1; i < rows.size(); ++i)
    if (away(i) - away(i - 1) >= at_once && (i + 1 == rows.size() || away(i + 1) - away(i - 1) >= at_once))
      return rows.times_s[i];
  std::size_t first = rows.size();
  for (std::size_t i = 0; i < rows.size() && first == rows.size(); ++i)
    if (away(i) > least && (i + 1 == rows.size() || away(i + 1) > least)) first = i;
  if (first == rows.size()) return to_s;
  if (first == 0 || away(first) >= at_once) return rows.times_s[first];
  // It went gradually: follow its line back to where it left.
  std::size_t last = first + 1;
  while (last + 1 < rows.size() && away(last) < at_once) ++last;
  if (last >= rows.size()) return rows.times_s[first];
  const double slope = (away(last) - away(first)) / (rows.times_s[last] - rows.times_s[first]);
  if (slope <= 0.0) return rows.times_s[first];
  return std::max(rows.times_s[first] - away(first) / slope, rows.times_s.front());
}

std::vector<SuddenStep> sudden_steps(const ExaminedChannel& examined) {
  const double sudden_s = std::min(kSuddenS, kSuddenShare * examined.sampled->duration_s());
  const std::size_t width = examined.cells_in(sudden_s, 2);
  const std::vector<double> surprises = surprises_of(examined, width);
  std::vector<SuddenStep> steps;
  for (std::size_t k = 0; k < surprises.size();) {
    if (surprises[k] == 0.0) {
      ++k;
      continue;
    }
    std::size_t last = k;
    while (last + 1 < surprises.size() && surprises[last + 1] * surprises[k] > 0.0) ++last;
    SuddenStep step;
    step.before = k;
    step.after = std::min(last + width, examined.cells() - 1);
    std::size_t count = 0;
    const std::size_t from = k + 1 >= kCellsBefore ? k + 1 - kCellsBefore : 0;
    step.before_k = examined.median_apart(from, k + 1, count);
    const double after_k =
        examined.median_apart(step.after, step.after + std::max<std::size_t>(width, 3), count);
    step.jump_k = after_k - step.before_k;
    step.peak_k = step.jump_k;
    for (std::size_t i = step.before + 1; i <= step.after; ++i)
      if (examined.comparable(i) &&
          (examined.apart_k(i) - step.before_k) * step.jump_k > step.peak_k * step.jump_k)
        step.peak_k = examined.apart_k(i) - step.before_k;
    k = last + 1;
    if (count == 0 || step.jump_k * surprises[last] <= 0.0) continue;  // gone again at once: a wild reading
    step.onset_s = onset_of_excursion(examined, examined.time_s(step.before) - examined.sampled->step_s,
                                      examined.time_s(step.after), step.before_k, step.jump_k);
    steps.push_back(step);
  }
  return steps;
}

}  // namespace soakwright
