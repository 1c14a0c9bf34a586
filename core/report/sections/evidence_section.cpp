// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured for one requirement, as things that can be drawn on the chart.
#include <algorithm>
#include <cmath>

#include "core/measure/traces/trace.h"
#include "core/report/sections/sections.h"

namespace soakwright {
namespace {

/// The trace that carried the name `channel` at `at_s`: a spare stands in under the name of the one it
/// replaced.
std::optional<std::size_t> trace_of(const std::string& channel, double at_s, const ReportContext& context,
                                    const Chart& chart) {
  std::string name = channel;
  if (context.analysis.verdicts)
    for (const Replacement& replacement : context.analysis.verdicts->replaced)
      if (replacement.channel == channel && at_s > replacement.from_s) name = replacement.by;
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (chart.traces[i].name == name) return i;
  return std::nullopt;
}

/// The trace's temperature at a moment, on the straight line between the readings around it.
std::optional<double> level_at(const ChartTrace& trace, const Record& record, double at_s) {
  const auto& times = record.times_s;
  if (times.empty()) return std::nullopt;
  auto after = static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), at_s) - times.begin());
  after = std::min(after, times.size() - 1);
  std::size_t right = after;
  while (right < times.size() && !trace.readings.celsius(right)) ++right;
  std::size_t left = after;
  while (left > 0 && (times[left] > at_s || !trace.readings.celsius(left))) --left;
  const auto before = times[left] <= at_s ? trace.readings.celsius(left) : std::nullopt;
  if (right == times.size()) return before;
  const double later = *trace.readings.celsius(right);
  if (!before || right == left || times[right] <= at_s) return later;
  return *before + (later - *before) * (at_s - times[left]) / (times[right] - times[left]);
}

/// The fitted line of a rate: through the mean of the readings in its window, with the slope that was
/// measured.
std::optional<std::pair<ChartPoint, ChartPoint>> fitted_line(const ChartTrace& trace, const Record& record,
                                                             double from_s, double to_s,
                                                             double rate_c_per_h) {
  const auto& times = record.times_s;
  const auto first = static_cast<std::size_t>(
      std::lower_bound(times.begin(), times.end(), from_s - kWindowSlack_s) - times.begin());
  double sum_t = 0.0;
  double sum_c = 0.0;
  double count = 0.0;
  for (std::size_t row = first; row < times.size() && times[row] <= to_s + kWindowSlack_s; ++row) {
    const auto celsius = trace.readings.celsius(row);
    if (!celsius) continue;
    sum_t += times[row] - from_s;
    sum_c += *celsius;
    count += 1.0;
  }
  if (count == 0.0) return std::nullopt;
  const double middle_s = from_s + sum_t / count;
  const auto on_line = [&](double at_s) {
    return ChartPoint{at_s, sum_c / count + rate_c_per_h / 3600.0 * (at_s - middle_s), {}};
  };
  return std::pair{on_line(from_s), on_line(to_s)};
}

}  // namespace

Evidence evidence_of(const Requirement& requirement, const ReportContext& context, const Chart& chart) {
  const Record& record = *context.analysis.record;
  const PrintedNumbers& say = context.say;
  Evidence evidence;
  evidence.from_s = requirement.from_s;
  evidence.to_s = requirement.to_s;
  evidence.at_s = requirement.at_s;
  if (requirement.quantity() == QuantityKind::temperature) evidence.level_c = requirement.limit;

  const double at_s = requirement.at_s.value_or(requirement.from_s.value_or(0.0));
  for (const auto& name : {requirement.channel, requirement.channel_2})
    if (name)
      if (const auto trace = trace_of(*name, at_s, context, chart)) evidence.traces.push_back(*trace);

  const auto add_point = [&](std::size_t trace, double moment) {
    if (const auto level = level_at(chart.traces[trace], record, moment))
      evidence.points.push_back({moment, *level, chart.traces[trace].name + " " + say.temperature(*level)});
  };
  const EvidenceShape shape = facts_of(requirement.kind).evidence;
  const bool is_fit = shape == EvidenceShape::rising_fit || shape == EvidenceShape::falling_fit;
  if (is_fit && requirement.measured && requirement.from_s && requirement.to_s && !evidence.traces.empty()) {
    const double sign = shape == EvidenceShape::falling_fit ? -1.0 : 1.0;
    evidence.fit = fitted_line(chart.traces[evidence.traces.front()], record, *requirement.from_s,
                               *requirement.to_s, sign * *requirement.measured);
    return evidence;
  }
  if (requirement.at_s) {
    for (const std::size_t trace : evidence.traces) add_point(trace, *requirement.at_s);
  } else if (requirement.from_s && requirement.to_s) {
    for (const std::size_t trace : evidence.traces) {
      add_point(trace, *requirement.from_s);
      add_point(trace, *requirement.to_s);
    }
  }
  if (shape == EvidenceShape::hold_clock && requirement.from_s && requirement.to_s) {
    // The thermocouples that started and stopped the clock.
    const std::pair<double, std::optional<std::string>> ends[] = {
        {*requirement.from_s, requirement.started_by}, {*requirement.to_s, requirement.stopped_by}};
    for (const auto& [edge_s, name] : ends) {
      const auto trace = name ? trace_of(*name, edge_s, context, chart) : std::nullopt;
      if (!trace) continue;
      if (const auto level = level_at(chart.traces[*trace], record, edge_s))
        evidence.points.push_back({edge_s, *level, chart.traces[*trace].name});
    }
  }
  std::stable_sort(evidence.points.begin(), evidence.points.end(),
                   [](const ChartPoint& a, const ChartPoint& b) { return a.at_s < b.at_s; });
  return evidence;
}

}  // namespace soakwright
