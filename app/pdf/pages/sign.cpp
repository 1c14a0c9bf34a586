// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pages/sign.h"

#include <QPainter>
#include <QPolygonF>

#include "app/pdf/sheet_style.h"

namespace soakwright::pdf {

Sign sign_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::met:
      return Sign::met;
    case Verdict::not_met:
      return Sign::not_met;
    case Verdict::inconclusive:
      break;
  }
  return Sign::inconclusive;
}

Sign sign_of(Finding::Kind kind) {
  switch (kind) {
    case Finding::Kind::not_met:
      return Sign::not_met;
    case Finding::Kind::inconclusive:
      return Sign::inconclusive;
    case Finding::Kind::note:
      break;
  }
  return Sign::note;
}

QColor colour_of(Sign sign) {
  switch (sign) {
    case Sign::met:
      return colour::kMet;
    case Sign::not_met:
      return colour::kNotMet;
    case Sign::inconclusive:
      return colour::kInconclusive;
    case Sign::note:
      break;
  }
  return colour::kNote;
}

void draw_sign(QPainter& painter, QPointF centre, double radius, Sign sign) {
  draw_sign(painter, centre, radius, sign, colour_of(sign), colour::kPdf);
}

void draw_sign(QPainter& painter, QPointF centre, double radius, Sign sign, const QColor& ink,
               const QColor& pdf) {
  const auto at = [&](double x, double y) { return centre + radius * QPointF(x, y); };
  const auto line = [&](const QColor& colour) {
    return QPen(colour, 0.28 * radius, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  };
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  switch (sign) {
    case Sign::met:
      painter.setPen(Qt::NoPen);
      painter.setBrush(ink);
      painter.drawEllipse(centre, radius, radius);
      painter.setBrush(Qt::NoBrush);
      painter.setPen(line(pdf));
      painter.drawPolyline(QPolygonF{{at(-0.45, 0.05), at(-0.12, 0.40), at(0.50, -0.35)}});
      break;
    case Sign::not_met:
      painter.setPen(Qt::NoPen);
      painter.setBrush(ink);
      painter.drawPolygon(QPolygonF{{at(0, -1.2), at(1.2, 0), at(0, 1.2), at(-1.2, 0)}});
      painter.setPen(line(pdf));
      painter.drawLine(at(-0.38, 0.38), at(0.38, -0.38));
      break;
    case Sign::inconclusive:
      painter.setPen(line(ink));
      painter.setBrush(pdf);
      painter.drawEllipse(centre, 0.86 * radius, 0.86 * radius);
      painter.drawLine(at(-0.42, 0), at(0.42, 0));
      break;
    case Sign::note:
      painter.setPen(line(ink));
      painter.setBrush(pdf);
      painter.drawRect(QRectF(at(-0.78, -0.78), at(0.78, 0.78)));
      painter.setPen(Qt::NoPen);
      painter.setBrush(ink);
      painter.drawEllipse(centre, 0.28 * radius, 0.28 * radius);
      break;
  }
  painter.restore();
}

}  // namespace soakwright::pdf
