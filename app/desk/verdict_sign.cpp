#include "app/desk/verdict_sign.h"

#include <QPainter>
#include <QPixmap>
#include <QPolygonF>

namespace soakwright::desk {

Sign sign_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::met:
      return Sign::met;
    case Verdict::not_met:
      return Sign::not_met;
    case Verdict::undecided:
      break;
  }
  return Sign::undecided;
}

Sign sign_of(Finding::Kind kind) {
  switch (kind) {
    case Finding::Kind::not_met:
      return Sign::not_met;
    case Finding::Kind::undecided:
      return Sign::undecided;
    case Finding::Kind::note:
      break;
  }
  return Sign::note;
}

QColor colour_of(Sign sign, const ChartColours& colours) {
  switch (sign) {
    case Sign::met:
      return colours.met;
    case Sign::not_met:
      return colours.not_met;
    case Sign::undecided:
      return colours.undecided;
    case Sign::note:
      break;
  }
  return colours.note;
}

void draw_sign(QPainter& painter, const QPointF& centre, double radius, Sign sign, const QColor& colour,
               const QColor& paper) {
  const double r = radius;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(centre);
  const auto line = [r](const QColor& ink) {
    return QPen(ink, 0.28 * r, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  };
  switch (sign) {
    case Sign::met:
      painter.setPen(Qt::NoPen);
      painter.setBrush(colour);
      painter.drawEllipse(QPointF(), r, r);
      painter.setBrush(Qt::NoBrush);
      painter.setPen(line(paper));
      painter.drawPolyline(QPolygonF({{-0.45 * r, 0.05 * r}, {-0.12 * r, 0.40 * r}, {0.50 * r, -0.35 * r}}));
      break;
    case Sign::not_met:
      painter.setPen(Qt::NoPen);
      painter.setBrush(colour);
      painter.drawPolygon(QPolygonF({{0, -1.2 * r}, {1.2 * r, 0}, {0, 1.2 * r}, {-1.2 * r, 0}}));
      painter.setPen(line(paper));
      painter.drawLine(QPointF(-0.38 * r, 0.38 * r), QPointF(0.38 * r, -0.38 * r));
      break;
    case Sign::undecided:
      painter.setPen(line(colour));
      painter.setBrush(paper);
      painter.drawEllipse(QPointF(), 0.86 * r, 0.86 * r);
      painter.drawLine(QPointF(-0.42 * r, 0), QPointF(0.42 * r, 0));
      break;
    case Sign::note:
      painter.setPen(line(colour));
      painter.setBrush(paper);
      painter.drawRect(QRectF(-0.78 * r, -0.78 * r, 1.56 * r, 1.56 * r));
      painter.setPen(Qt::NoPen);
      painter.setBrush(colour);
      painter.drawEllipse(QPointF(), 0.28 * r, 0.28 * r);
      break;
  }
  painter.restore();
}

QIcon sign_icon(Sign sign, const ChartColours& colours, int size) {
  QIcon icon;
  for (const int scale : {1, 2, 3}) {
    QPixmap pixmap(size * scale, size * scale);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    const double middle = 0.5 * size * scale;
    draw_sign(painter, {middle, middle}, 0.38 * size * scale, sign, colour_of(sign, colours), colours.paper);
    painter.end();
    pixmap.setDevicePixelRatio(scale);
    icon.addPixmap(pixmap);
  }
  return icon;
}

}  // namespace soakwright::desk
