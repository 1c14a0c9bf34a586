// SPDX-License-Identifier: GPL-3.0-or-later
// The two cursors between which is measured, across temperatures, rates and spreads.

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {

void CursorLayer::draw(QCPPainter* painter) {
  if (!scene().chart() || !axisRect() || !axisRect()->visible()) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;
  const QFontMetricsF metrics(painter->font());
  if (scene().cursor_a && scene().cursor_b) {
    QColor between = colours.evidence_fill;
    between.setAlphaF(0.35F);
    painter->fillRect(QRectF(QPointF(map.x(*scene().cursor_a), map.rect.top()),
                             QPointF(map.x(*scene().cursor_b), map.rect.bottom() + 1))
                          .normalized(),
                      between);
  }
  const auto draw_one = [&](const std::optional<double>& at_s, const QString& name) {
    if (!at_s) return;
    const double x = map.x(*at_s);
    painter->setPen(QPen(colours.evidence, 1.6));
    painter->drawLine(QPointF(x, map.rect.top()), QPointF(x, map.rect.bottom()));
    if (!named_) return;
    const QRectF box(x - 9.0, map.rect.top(), 18.0, metrics.height());
    painter->fillRect(box, colours.evidence);
    painter->setPen(colours.background);
    painter->drawText(box, Qt::AlignCenter, name);
  };
  draw_one(scene().cursor_a, QStringLiteral("A"));
  draw_one(scene().cursor_b, QStringLiteral("B"));
}

}  // namespace soakwright::gui
