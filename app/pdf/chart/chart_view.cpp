// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_view.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace soakwright::pdf {
namespace {

/// Lowest and highest of what was looked at.
class Extent {
 public:
  void take(double value) {
    low_ = std::min(low_, value);
    high_ = std::max(high_, value);
  }
  [[nodiscard]] bool any() const { return low_ <= high_; }
  [[nodiscard]] double low() const { return low_; }
  [[nodiscard]] double high() const { return high_; }

 private:
  double low_ = std::numeric_limits<double>::infinity();
  double high_ = -std::numeric_limits<double>::infinity();
};

void take_readings(Extent& extent, const ChartTrace& trace, const Record& record, double from_s,
                   double to_s) {
  const auto& times = record.times_s;
  const auto first =
      static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), from_s) - times.begin());
  const auto last =
      static_cast<std::size_t>(std::upper_bound(times.begin(), times.end(), to_s) - times.begin());
  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  trace.readings.collect(first, last, rows, celsius);
  for (const double value : celsius) extent.take(value);
}

/// The same without what a person excluded of the trace: a junction that came off would flatten the others.
void take_evaluated(Extent& extent, const Chart& chart, std::size_t trace, double from_s, double to_s) {
  double at_s = from_s;
  std::vector<std::pair<double, double>> excluded;
  for (const ChartExclusion& one : chart.exclusions)
    if (one.trace == trace) excluded.emplace_back(one.from_s, one.to_s);
  std::sort(excluded.begin(), excluded.end());
  excluded.emplace_back(to_s, to_s);
  for (const auto& [begin_s, end_s] : excluded) {
    if (std::min(begin_s, to_s) > at_s)
      take_readings(extent, chart.traces[trace], *chart.record, at_s, std::min(begin_s, to_s));
    at_s = std::max(at_s, end_s);
  }
}

void widen(ChartWindow& window, double share_below, double share_above, double least_k) {
  const double height = std::max(window.high_c - window.low_c, least_k);
  const double middle = 0.5 * (window.high_c + window.low_c);
  window.low_c = middle - 0.5 * height - share_below * height;
  window.high_c = middle + 0.5 * height + share_above * height;
}

}  // namespace

bool is_drawn(const ChartTrace& trace) { return trace.role != ChartTrace::Role::off || trace.excluded; }

ChartWindow whole_window(const Chart& chart) {
  Extent extent;
  for (const ChartTrace& trace : chart.traces) {
    if (!is_drawn(trace)) continue;
    const Channel& channel = chart.record->channels[trace.channel];
    if (channel.min_c) extent.take(*channel.min_c);
    if (channel.max_c) extent.take(*channel.max_c);
  }
  for (const ChartRange& range : chart.ranges) {
    extent.take(range.low_c);
    if (range.high_c) extent.take(*range.high_c);
  }
  for (const ChartLevel& level : chart.levels) extent.take(level.level_c);
  ChartWindow window{chart.begin_s, std::max(chart.end_s, chart.begin_s + 1.0), 0.0, 100.0};
  if (extent.any()) {
    window.low_c = extent.low();
    window.high_c = extent.high();
  }
  widen(window, 0.03, 0.06, 10.0);
  return window;
}

ChartWindow window_around(const Chart& chart, const Evidence& evidence) {
  constexpr double kLeastSpan_s = 1200.0;
  double from_s = evidence.from_s.value_or(evidence.at_s.value_or(chart.begin_s));
  double to_s = evidence.to_s.value_or(evidence.at_s.value_or(from_s));
  for (const ChartPoint& point : evidence.points) {
    from_s = std::min(from_s, point.at_s);
    to_s = std::max(to_s, point.at_s);
  }
  const double intervals = chart.record ? 12.0 * chart.record->interval_s : 0.0;
  const double room = std::max({0.35 * (to_s - from_s), kLeastSpan_s, intervals});
  ChartWindow window{std::max(chart.begin_s, from_s - room), std::min(chart.end_s, to_s + room), 0.0, 0.0};
  if (window.to_s <= window.from_s) window.to_s = window.from_s + 1.0;

  Extent extent;
  const auto take = [&](const ChartTrace& trace) {
    take_readings(extent, trace, *chart.record, window.from_s, window.to_s);
  };
  if (evidence.traces.empty()) {
    for (const ChartTrace& trace : chart.traces)
      if (trace.role == ChartTrace::Role::evaluated) take(trace);
  } else {
    for (const std::size_t trace : evidence.traces) take(chart.traces[trace]);
  }
  for (const ChartPoint& point : evidence.points) extent.take(point.level_c);
  if (evidence.level_c) extent.take(*evidence.level_c);
  if (evidence.fit) {
    extent.take(evidence.fit->first.level_c);
    extent.take(evidence.fit->second.level_c);
  }
  if (!extent.any()) return whole_window(chart);
  window.low_c = extent.low();
  window.high_c = extent.high();
  widen(window, 0.12, 0.18, 4.0);
  return window;
}

ChartWindow window_of_hold(const Chart& chart, const ChartRange& range) {
  constexpr double kShare = 0.08;
  constexpr double kOpenRange_k = 30.0;  // where the range has no upper edge
  const double room_s = kShare * (range.to_s - range.from_s);
  ChartWindow window{std::max(chart.begin_s, range.from_s - room_s),
                     std::min(chart.end_s, range.to_s + room_s), 0.0, 0.0};
  if (window.to_s <= window.from_s) window.to_s = window.from_s + 1.0;
  Extent extent;
  extent.take(range.low_c);
  extent.take(range.high_c.value_or(range.low_c + kOpenRange_k));
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (is_of_hold(chart, chart.traces[i], range)) take_evaluated(extent, chart, i, range.from_s, range.to_s);
  window.low_c = extent.low();
  window.high_c = extent.high();
  widen(window, 0.12, 0.16, 4.0);
  return window;
}

bool is_of_hold(const Chart& chart, const ChartTrace& trace, const ChartRange& range) {
  const Channel& channel = chart.record->channels[trace.channel];
  const bool counts = trace.role == ChartTrace::Role::evaluated || trace.role == ChartTrace::Role::spare;
  return counts && (!range.weld || !channel.weld || *channel.weld == *range.weld);
}

ChartMap::ChartMap(const QRectF& plot, const ChartWindow& window)
    : plot_(plot),
      window_(window),
      per_second_(plot.width() / (window.to_s - window.from_s)),
      per_kelvin_(plot.height() / (window.high_c - window.low_c)) {}

double ChartMap::x_within(double at_s) const { return std::clamp(x(at_s), plot_.left(), plot_.right()); }

}  // namespace soakwright::pdf
