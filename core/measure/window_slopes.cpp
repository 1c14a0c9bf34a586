#include "core/measure/window_slopes.h"

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
  samples.ticks.reserve(end - first);
  for (std::size_t i = first; i < end; ++i)
    samples.ticks.push_back(rows.ticks[leg.row(i) - record.first_row]);
  samples.units.reserve(end - first);
  readings.collect_units(leg.row(first), leg.row(end - 1) + 1, samples.units);
  for (const std::int64_t unit : samples.units)
    samples.largest_unit = std::max(samples.largest_unit, std::abs(unit));
  return samples;
}

std::optional<WindowSlope> slope_over(const IntegerSamples& samples, std::size_t first, std::size_t end,
                                      Span part) {
  if (end < first + kFewestForSlope) return std::nullopt;
  window_slopes::Sums<window_slopes::Wide> sums;
  sums.origin = samples.tick(first);
  for (std::size_t i = first; i < end; ++i) sums.add(samples.tick(i), samples.unit(i));
  WindowSlope window = window_slopes::slope_of(sums, samples);
  window.at_s = (part.first + part.second) / 2.0;
  window.from_s = part.first;
  window.to_s = part.second;
  return window;
}

}  // namespace soakwright
