// SPDX-License-Identifier: GPL-3.0-or-later
// The traces: per pixel column what the readings show there, in one polyline per unbroken part.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {
namespace {

constexpr double kFadedWidth = 0.9;
constexpr double kPickedWidth = 2.4;

}  // namespace

void TraceLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  if (!chart || !scene().traces || !axisRect()) return;
  const PixelMap map(*axisRect());
  const auto draw_all = [&](bool followed) {
    for (std::size_t i = 0; i < chart->traces.size(); ++i) {
      if (!scene().shows(i) || scene().followed(i) != followed) continue;
      QPen pen = scene().pens[i];
      if (!followed) {
        pen.setColor(mixed(pen.color(), scene().colours.background, kFadedShare));
        pen.setWidthF(kFadedWidth);
      } else if (!scene().emphasised.empty() || (scene().evidence && !scene().evidence->traces.empty())) {
        pen.setWidthF(kPickedWidth);
        pen.setStyle(Qt::SolidLine);
      }
      drawTrace(painter, map, i, pen);
    }
  };
  beginParts(painter, map);
  draw_all(false);
  draw_all(true);
  endParts(painter, map);
}

void TraceLayer::drawTrace(QCPPainter* painter, const PixelMap& map, std::size_t trace, const QPen& pen) {
  const Chart& chart = *scene().chart();
  const TracePyramid& pyramid = scene().traces->channels[chart.traces[trace].channel];
  const QPen exclusion_pen(scene().colours.faint_ink, pen.widthF(), Qt::DotLine);

  std::vector<ChartExclusion> exclusions;
  for (const ChartExclusion& exclusion : chart.exclusions)
    if (exclusion.trace == trace && exclusion.to_s > map.from_s && exclusion.from_s < map.to_s)
      exclusions.push_back(exclusion);
  std::sort(exclusions.begin(), exclusions.end(),
            [](const ChartExclusion& a, const ChartExclusion& b) { return a.from_s < b.from_s; });

  double from_s = map.from_s;
  for (const ChartExclusion& exclusion : exclusions) {
    setPartPen(painter, pen);
    if (exclusion.from_s > from_s)
      drawPart(painter, map, pyramid, {&chart, from_s, exclusion.from_s, 0.0, true});
    setPartPen(painter, exclusion_pen);
    drawPart(painter, map, pyramid, {&chart, std::max(from_s, exclusion.from_s), exclusion.to_s, 0.0, true});
    from_s = std::max(from_s, exclusion.to_s);
  }
  setPartPen(painter, pen);
  if (from_s < map.to_s) drawPart(painter, map, pyramid, {&chart, from_s, map.to_s, 0.0, true});
}

}  // namespace soakwright::gui
