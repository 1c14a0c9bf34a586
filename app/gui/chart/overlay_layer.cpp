// SPDX-License-Identifier: GPL-3.0-or-later
// Another record over this one: thin and grey, so that it is not taken for a thermocouple of the open record,
// with its name in the corner.

#include <algorithm>

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
  const QFontMetricsF metrics(painter->font());
  const double width = std::min(metrics.horizontalAdvance(overlay->name) + 8.0, map.rect.width() - 8.0);
  const QRectF box(map.rect.left() + 4.0, map.rect.bottom() - metrics.height() - 4.0, width,
                   metrics.height());
  QColor veil = scene().colours.background;
  veil.setAlphaF(0.85F);
  painter->fillRect(box, veil);
  painter->setPen(scene().colours.ink);
  painter->drawText(box, Qt::AlignLeft | Qt::AlignVCenter,
                    metrics.elidedText(overlay->name, Qt::ElideMiddle, width));
}

}  // namespace soakwright::gui
