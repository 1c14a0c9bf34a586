// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/verdict_sign.h"

#include <QGuiApplication>
#include <QPainter>
#include <QPalette>
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
  const QPalette palette = QGuiApplication::palette();
  const auto draw = [&](QIcon::Mode mode, int scale, const QColor& ink, const QColor& ground) {
    QPixmap pixmap(size * scale, size * scale);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    const double middle = 0.5 * size * scale;
    draw_sign(painter, {middle, middle}, 0.38 * size * scale, sign, ink, ground);
    painter.end();
    pixmap.setDevicePixelRatio(scale);
    icon.addPixmap(pixmap, mode);
  };
  for (const int scale : {1, 2, 3}) {
    draw(QIcon::Normal, scale, colour_of(sign, colours), colours.background);
    // On a chosen line in the colour of its words: its own may be as dark as the ground there.
    draw(QIcon::Selected, scale, palette.color(QPalette::HighlightedText),
         palette.color(QPalette::Highlight));
  }
  return icon;
}

}  // namespace soakwright::gui
