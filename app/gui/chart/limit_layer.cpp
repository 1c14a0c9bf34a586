// SPDX-License-Identifier: GPL-3.0-or-later
// What a limit that is being dragged has come to, in words at its line.

#include <algorithm>

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {

void LimitLayer::draw(QCPPainter* painter) {
  const auto& moved = scene().moved;
  if (!moved || !scene().chart() || !axisRect()) return;
  const PixelMap map(*axisRect());
  const QString words = limit_words(moved->line, moved->level_c);
  const QFontMetricsF metrics(painter->font());
  const double y = map.y(moved->level_c);
  QRectF box(0.0, 0.0, metrics.horizontalAdvance(words) + 12.0, metrics.height() + 4.0);
  const double from = std::max(map.x(moved->line.from_s), static_cast<double>(map.rect.left()));
  const double to = std::min(map.x(moved->line.to_s), static_cast<double>(map.rect.right()));
  // Beside the line where there is room, else over it: what is to be seen is between the two ends.
  const bool beside = to + 6.0 + box.width() < map.rect.right();
  box.moveCenter({0.5 * (from + to), y});
  if (beside)
    box.moveLeft(to + 6.0);
  else
    box.moveBottom(y - 4.0);
  if (box.top() < map.rect.top()) box.moveTop(beside ? map.rect.top() : y + 4.0);
  box.moveLeft(std::clamp(box.left(), map.rect.left() + 2.0,
                          std::max(map.rect.left() + 2.0, map.rect.right() - box.width() - 2.0)));
  painter->setPen(QPen(scene().colours.ink, 1.6));
  painter->drawLine(QPointF(from, y), QPointF(to, y));
  painter->setPen(QPen(scene().colours.faint_ink, 1.0));
  painter->setBrush(scene().colours.background);
  painter->drawRect(box);
  painter->setPen(scene().colours.ink);
  painter->drawText(box, Qt::AlignCenter, words);
}

}  // namespace soakwright::gui
