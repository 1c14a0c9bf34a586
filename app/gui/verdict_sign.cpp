// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/verdict_sign.h"

#include <QPainter>
#include <QPixmap>

namespace soakwright::gui {

QColor colour_of(Sign sign, const ChartColours& colours) {
  switch (sign) {
    case Sign::met:
      return colours.met;
    case Sign::not_met:
      return colours.not_met;
    case Sign::inconclusive:
      return colours.inconclusive;
    case Sign::note:
      break;
  }
  return colours.note;
}

QIcon sign_icon(Sign sign, const ChartColours& colours, int size) {
  QIcon icon;
  for (const int scale : {1, 2, 3}) {
    QPixmap pixmap(size * scale, size * scale);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    const double middle = 0.5 * size * scale;
    draw_sign(painter, {middle, middle}, 0.38 * size * scale, sign, colour_of(sign, colours),
              colours.background);
    painter.end();
    pixmap.setDevicePixelRatio(scale);
    icon.addPixmap(pixmap);
  }
  return icon;
}

}  // namespace soakwright::gui
