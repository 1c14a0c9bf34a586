#include "core/measure/window_slopes.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>

namespace soakwright {

RowTicks row_ticks(const Record& record) {
  constexpr double kNanoseconds = 1e9;
  RowTicks rows;
  const std::span<const double> times = record.judged_times_s();
  rows.ticks.reserve(times.size());
  std::int64_t step = 0;
  for (const double t : times) {
    const std::int64_t tick = std::llround(t * kNanoseconds);
    if (!rows.ticks.empty()) {
      const std::int64_t difference = tick - rows.ticks.back();
      if (step == 0 || difference % step != 0) step = std::gcd(step, difference);
    }
    rows.ticks.push_back(tick);
  }
  if (step == 0) step = 1;
  const std::int64_t origin = rows.ticks.empty() ? 0 : rows.ticks.front();
  for (std::int64_t& tick : rows.ticks) tick = (tick - origin) / step;
  rows.tick_s = static_cast<double>(step) / kNanoseconds;
  return rows;
}

IntegerSamples integer_samples(const Record& record, const RowTicks& rows, const Leg& leg, std::size_t first,
                               std::size_t end) {
  IntegerSamples samples;
  samples.base = first;
  samples.tick_s = rows.tick_s;
  const Readings& readings = record.channels[leg.channel].readings;
  samples.unit_k = readings.kelvin_per_unit();
  if (end <= first) return samples;
  const std::size_t count = end - first;
  samples.ticks.resize(count);
  if (leg.rows.empty()) {
    const auto from = rows.ticks.begin() + static_cast<std::ptrdiff_t>(leg.row(first) - record.first_row);
    std::copy_n(from, count, samples.ticks.begin());
  } else {
    for (std::size_t i = 0; i < count; ++i)
      samples.ticks[i] = rows.ticks[leg.row(first + i) - record.first_row];
  }
  std::int64_t step = count > 1 ? samples.ticks[1] - samples.ticks[0] : 0;
  for (std::size_t i = 2; i < count && step != 0; ++i)
    if (samples.ticks[i] - samples.ticks[i - 1] != step) step = 0;
  samples.even_step = step;
  samples.units.reserve(count);
  readings.collect_units(leg.row(first), leg.row(end - 1) + 1, samples.units);
  const auto [least, most] = std::minmax_element(samples.units.begin(), samples.units.end());
  samples.largest_unit = std::max(std::abs(*least), std::abs(*most));
  return samples;
}

WindowSlope window_about(const Leg& leg, const IntegerSamples& samples, std::size_t sample, double width_s,
                         double slope_c_per_h, const WindowShape& shape) {
  WindowSlope window;
  window.at_s = leg.t[sample];
  window.from_s = window.at_s - width_s / 2.0;
  window.to_s = window.at_s + width_s / 2.0;
  window.slope_c_per_h = slope_c_per_h;
  window.root_sxx_h = std::sqrt(shape.denominator / shape.samples) * samples.tick_s / 3600.0;
  window.samples = static_cast<std::size_t>(shape.samples);
  return window;
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
