// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_of_weld.h"

#include <algorithm>

namespace soakwright::pdf {

Chart chart_of_weld(const Report& report, const std::string& weld) {
  Chart chart = report.chart;
  if (weld.empty()) return chart;
  const auto is_other = [&](const std::optional<std::string>& of) { return of && *of != weld; };
  for (ChartTrace& trace : chart.traces)
    if (is_other(chart.record->channels[trace.channel].weld)) trace.role = ChartTrace::Role::off;
  std::erase_if(chart.ranges, [&](const ChartRange& range) { return is_other(range.weld); });
  std::erase_if(chart.stages, [&](const ChartSegment& stage) { return is_other(stage.weld); });
  std::erase_if(chart.marks, [&](const ChartMark& mark) {
    const std::string& of = report.findings[mark.finding].weld;
    return !of.empty() && of != weld;
  });
  std::erase_if(chart.exclusions, [&](const ChartExclusion& exclusion) {
    return chart.traces[exclusion.trace].role == ChartTrace::Role::off;
  });
  chart.title += ", weld " + weld;
  return chart;
}

}  // namespace soakwright::pdf
