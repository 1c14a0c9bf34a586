// SPDX-License-Identifier: GPL-3.0-or-later
// Levels, and what ranges, levels, notes and the required cycle are called: above the grid, whose lines would
// strike the words through.

#include <algorithm>

#include "app/gui/chart/chart_labels.h"
#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {
namespace {

QColor ink_of(ChartLabel::Kind kind, const ChartColours& colours) {
  switch (kind) {
    case ChartLabel::Kind::required:
    case ChartLabel::Kind::maximum:
      return colours.temperature_max;
    case ChartLabel::Kind::level:
      return colours.faint_ink;
    case ChartLabel::Kind::range:
      return mixed(colours.range_edge, colours.ink, 0.6);
    case ChartLabel::Kind::note:
      return colours.note;
    case ChartLabel::Kind::point:
      break;
  }
  return colours.evidence;
}

}  // namespace

void WordLayer::draw(QCPPainter* painter) {
  if (!scene().chart() || !axisRect()) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;
  // Levels above the grid: one at a round temperature would vanish in a line of it.
  for (const ChartLevel& level : scene().levels()) {
    const bool hard = level.kind == ChartLevel::Kind::temperature_max;
    painter->setPen(QPen(hard ? colours.temperature_max : colours.level, hard ? 1.6 : 1.2,
                         hard ? Qt::SolidLine : Qt::DashLine));
    painter->drawLine(
        QPointF(std::max(map.x(level.from_s), map.left), map.y(level.level_c)),
        QPointF(std::min(map.x(level.to_s), map.left + map.rect.width()), map.y(level.level_c)));
  }
  QColor veil = colours.background;
  veil.setAlphaF(0.8F);
  for (const ChartLabel& label : chart_labels(scene(), map, QFontMetricsF(painter->font()))) {
    if (label.kind == ChartLabel::Kind::point) continue;
    painter->fillRect(label.box, veil);
    painter->setPen(ink_of(label.kind, colours));
    painter->drawText(label.box, Qt::AlignCenter, label.text);
  }
}

}  // namespace soakwright::gui
