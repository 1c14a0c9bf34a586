// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/chart_scene.h"

#include <algorithm>

namespace soakwright::gui {

std::vector<ChartRange> ChartScene::ranges() const {
  std::vector<ChartRange> ranges = report->chart.ranges;
  for (ChartRange& range : ranges) {
    if (!moved || !draws(moved->line, range)) continue;
    if (moved->line.key == LimitKey::low)
      range.low_c = moved->level_c;
    else
      range.high_c = moved->level_c;
    range.text.clear();  // it is said at the line
  }
  return ranges;
}

std::vector<ChartLevel> ChartScene::levels() const {
  std::vector<ChartLevel> levels = report->chart.levels;
  for (ChartLevel& level : levels) {
    if (!moved || !draws(moved->line, level)) continue;
    level.level_c = moved->level_c;
    level.text.clear();
  }
  return levels;
}

bool ChartScene::shows(std::size_t trace) const {
  const std::size_t channel = report->chart.traces[trace].channel;
  if (channel < visible.size() && visible[channel]) return true;
  return evidence &&
         std::find(evidence->traces.begin(), evidence->traces.end(), trace) != evidence->traces.end();
}

bool ChartScene::followed(std::size_t trace) const {
  if (!emphasised.empty()) return std::find(emphasised.begin(), emphasised.end(), trace) != emphasised.end();
  if (evidence && !evidence->traces.empty())
    return std::find(evidence->traces.begin(), evidence->traces.end(), trace) != evidence->traces.end();
  return true;
}

std::vector<QPen> trace_pens(const Chart& chart, const ChartColours& colours) {
  std::vector<QPen> pens;
  // By the place of its column: a channel keeps its looks when another gets another role.
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    pens.push_back(colours.trace(i, chart.traces[i].excluded ? ChartTrace::Role::off : chart.traces[i].role));
  return pens;
}

}  // namespace soakwright::gui
