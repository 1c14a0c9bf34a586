// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/chart_scene.h"

#include <algorithm>

namespace soakwright::gui {

bool ChartScene::shows(std::size_t trace) const {
  const std::size_t channel = report->chart.traces[trace].channel;
  if (channel < visible.size() && visible[channel]) return true;
  return evidence &&
         std::find(evidence->traces.begin(), evidence->traces.end(), trace) != evidence->traces.end();
}

bool ChartScene::followed(std::size_t trace) const {
  if (emphasised) return *emphasised == trace;
  if (evidence && !evidence->traces.empty())
    return std::find(evidence->traces.begin(), evidence->traces.end(), trace) != evidence->traces.end();
  return true;
}

std::vector<QPen> trace_pens(const Chart& chart, const ChartColours& colours) {
  std::vector<QPen> pens;
  std::size_t on_the_work = 0;
  for (const ChartTrace& trace : chart.traces) {
    const bool work = trace.role == ChartTrace::Role::evaluated || trace.role == ChartTrace::Role::edge ||
                      trace.role == ChartTrace::Role::spare;
    pens.push_back(colours.trace(on_the_work, trace.role));
    if (work) ++on_the_work;
  }
  return pens;
}

}  // namespace soakwright::gui
