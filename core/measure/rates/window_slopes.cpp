// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/window_slopes.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace soakwright {

namespace {

/// The step between neighbours where all are equal, else 0.
std::int64_t equal_step(std::span<const std::int64_t> ticks) {
  if (ticks.size() < 2) return 0;
  const std::int64_t step = ticks[1] - ticks[0];
  for (std::size_t i = 2; i < ticks.size(); ++i)
    if (ticks[i] - ticks[i - 1] != step) return 0;
  return step;
}

/// The shortest step between neighbours, at least 1.
std::int64_t shortest_step(std::span<const std::int64_t> ticks) {
  std::int64_t shortest = ticks.size() < 2 ? 1 : ticks[1] - ticks[0];
  for (std::size_t i = 2; i < ticks.size(); ++i) shortest = std::min(shortest, ticks[i] - ticks[i - 1]);
  return std::max<std::int64_t>(shortest, 1);
}

/// The ticks after which the step is longer than the shortest, where few are.
std::optional<std::vector<std::size_t>> few_longer_steps(std::span<const std::int64_t> ticks,
                                                         std::int64_t least_step) {
  constexpr std::size_t kManyOfAll = 32;
  std::vector<std::size_t> longer;
  for (std::size_t i = 1; i < ticks.size(); ++i) {
    if (ticks[i] - ticks[i - 1] == least_step) continue;
    if (longer.size() * kManyOfAll > ticks.size()) return std::nullopt;
    longer.push_back(i - 1);
  }
  return longer;
}

/// At least as large as each, and less than twice the largest.
std::int64_t bound_on(const std::vector<std::int64_t>& units) {
  std::int64_t bits = 0;
  for (const std::int64_t unit : units) bits |= unit ^ (unit >> 63);
  std::int64_t bound = 1;
  while (bound <= bits) bound *= 2;
  return bound;
}

/// As sample numbers; of a channel without missing readings those of the rows.
std::optional<std::vector<std::size_t>> longer_steps_of(const IntegerSamples& samples, const RowTicks& rows,
                                                        std::size_t first_row, bool every_row) {
  auto longer = every_row ? rows.longer_steps : few_longer_steps(samples.ticks, samples.least_step);
  if (!longer) return longer;
  if (every_row) {
    const auto from = std::lower_bound(longer->begin(), longer->end(), first_row);
    longer->erase(longer->begin(), from);
    longer->erase(std::lower_bound(longer->begin(), longer->end(), first_row + samples.ticks.size()),
                  longer->end());
    for (std::size_t& row : *longer) row -= first_row;
  }
  for (std::size_t& sample : *longer) sample += samples.base;
  return longer;
}

}  // namespace

RowTicks row_ticks(const Record& record) {
  constexpr double kNanoseconds = 1e9;
  RowTicks rows;
  const std::span<const double> times = record.evaluated_times_s();
  rows.ticks.reserve(times.size());
  std::int64_t step = 0;
  for (const double t : times) {
    const std::int64_t tick = std::llround(t * kNanoseconds);
    if (!rows.ticks.empty()) {
      const std::int64_t difference = tick - rows.ticks.back();
      if (difference != step && (step == 0 || difference % step != 0)) step = std::gcd(step, difference);
    }
    rows.ticks.push_back(tick);
  }
  if (step == 0) step = 1;
  const std::int64_t origin = rows.ticks.empty() ? 0 : rows.ticks.front();
  for (std::int64_t& tick : rows.ticks) tick = (tick - origin) / step;
  rows.tick_s = static_cast<double>(step) / kNanoseconds;
  rows.even_step = equal_step(rows.ticks);
  rows.least_step = rows.even_step > 0 ? rows.even_step : shortest_step(rows.ticks);
  if (rows.even_step <= 0) rows.longer_steps = few_longer_steps(rows.ticks, rows.least_step);
  return rows;
}

IntegerSamples integer_samples(const Record& record, const RowTicks& rows, const TraceSource& source,
                               std::size_t first, std::size_t end) {
  IntegerSamples samples;
  samples.base = first;
  samples.tick_s = rows.tick_s;
  samples.least_step = rows.least_step;
  const Readings& readings = record.channels[source.channel].readings;
  samples.unit_k = readings.kelvin_per_unit();
  if (end <= first) return samples;
  const std::size_t count = end - first;
  if (source.rows.empty()) {
    samples.ticks = std::span{rows.ticks}.subspan(source.row(first) - record.first_row, count);
  } else {
    samples.own_ticks.resize(count);
    for (std::size_t i = 0; i < count; ++i)
      samples.own_ticks[i] = rows.ticks[source.row(first + i) - record.first_row];
    samples.ticks = samples.own_ticks;
  }
  samples.even_step = source.rows.empty() && rows.even_step > 0 ? rows.even_step : equal_step(samples.ticks);
  if (samples.even_step <= 0)
    samples.longer_steps =
        longer_steps_of(samples, rows, source.row(first) - record.first_row, source.rows.empty());
  readings.collect_units(source.row(first), source.row(end - 1) + 1, samples.units);
  samples.largest_unit = bound_on(samples.units);
  return samples;
}

WindowSlope window_about(const TraceSource& source, const IntegerSamples& samples, std::size_t sample,
                         double width_s, double slope_c_per_h, const WindowShape& shape) {
  WindowSlope window;
  window.at_s = source.t[sample];
  window.from_s = window.at_s - width_s / 2.0;
  window.to_s = window.at_s + width_s / 2.0;
  window.slope_c_per_h = slope_c_per_h;
  window.root_sxx_h = std::sqrt(shape.denominator / shape.samples) * samples.tick_s / 3600.0;
  window.samples = static_cast<std::size_t>(shape.samples);
  return window;
}

WindowShape shape_over(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  window_slopes::Sums<window_slopes::Wide> sums;
  sums.origin = samples.tick(first);
  for (std::size_t i = first; i < end; ++i) sums.add(samples.tick(i), 0);
  return sums.shape();
}

std::optional<WindowSlope> slope_over(const IntegerSamples& samples, std::size_t first, std::size_t end,
                                      Span part) {
  if (end < first + kFewestForSlope) return std::nullopt;
  window_slopes::Sums<window_slopes::Wide> sums;
  sums.origin = samples.tick(first);
  for (std::size_t i = first; i < end; ++i) sums.add(samples.tick(i), samples.unit(i));
  const WindowShape shape = sums.shape();
  WindowSlope window;
  window.at_s = (part.first + part.second) / 2.0;
  window.from_s = part.first;
  window.to_s = part.second;
  window.slope_c_per_h =
      sums.numerator() / shape.denominator * window_slopes::units_per_tick_to_c_per_h(samples);
  window.root_sxx_h = std::sqrt(shape.denominator / shape.samples) * samples.tick_s / 3600.0;
  window.samples = end - first;
  return window;
}

}  // namespace soakwright
