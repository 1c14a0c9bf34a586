// SPDX-License-Identifier: GPL-3.0-or-later
// Another record over this one: thin and grey, so that it is not taken for a thermocouple of the open record,
// with its name above the plot.

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {
namespace {

constexpr double kOverlayWidth = 1.0;

}  // namespace

void OverlayLayer::draw(QCPPainter* painter) {
  const auto& overlay = scene().overlay;
  if (!overlay || !scene().chart() || !axisRect()) return;
  const PixelMap map(*axisRect());
  const Chart& other = overlay->report->chart;
  beginParts(painter, map);
  setPartPen(painter, QPen(scene().colours.faint_ink, kOverlayWidth));
  for (const ChartTrace& trace : other.traces) {
    if (trace.role != ChartTrace::Role::evaluated) continue;
    drawPart(painter, map, overlay->traces->channels[trace.channel],
             {&other, map.from_s - overlay->offset_s, map.to_s - overlay->offset_s, overlay->offset_s});
  }
  endParts(painter, map);
  drawName(painter, map, overlay->name);
}

}  // namespace soakwright::gui
