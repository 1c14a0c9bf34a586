// SPDX-License-Identifier: GPL-3.0-or-later
// The required cycle behind the traces: a ramp as the line that no thermocouple may cross, the hold time as a
// bracket under its range.

#include <QLineF>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kLineWidth = 1.3;
constexpr double kBracketBelow = 14.0;  ///< pixels below the range, clear of the bar of what was reached
constexpr double kTick = 5.0;

void put_words(QCPPainter* painter, const QPointF& middle, const QString& words,
               const ChartColours& colours) {
  const QFontMetricsF metrics(painter->font());
  QRectF box(0, 0, metrics.horizontalAdvance(words) + 6.0, metrics.height());
  box.moveCenter(middle);
  QColor veil = colours.background;
  veil.setAlphaF(0.8F);
  painter->fillRect(box, veil);
  painter->setPen(colours.temperature_max);
  painter->drawText(box, Qt::AlignCenter, words);
}

}  // namespace

void RequiredLayer::draw(QCPPainter* painter) {
  const auto& required = scene().required;
  if (!scene().shows_required || !required || !scene().chart() || !axisRect()) return;
  const PixelMap map(*axisRect());
  for (const RequiredRamp& ramp : required->ramps) drawRamp(painter, map, ramp);
  for (const RequiredHold& hold : required->holds) drawHold(painter, map, hold);
}

QString RequiredLayer::limitOf(std::size_t requirement) const {
  for (const RequirementRow& row : scene().report->requirements)
    if (row.requirement == requirement) return pdf::shown_text(row.limit);
  return {};
}

void RequiredLayer::drawRamp(QCPPainter* painter, const PixelMap& map, const RequiredRamp& ramp) const {
  const QPointF from(map.x(ramp.from_s), map.y(ramp.from_c));
  const QPointF to(map.x(ramp.to_s), map.y(ramp.to_c));
  painter->setPen(QPen(scene().colours.temperature_max, kLineWidth, Qt::DashDotLine));
  painter->drawLine(from, to);
  // In the middle of what is in view of it, on the side that is not permitted.
  const double left = std::max(from.x(), static_cast<double>(map.rect.left()));
  const double right = std::min(to.x(), static_cast<double>(map.rect.right()));
  if (right <= left || to.x() <= from.x()) return;
  const double share = (0.5 * (left + right) - from.x()) / (to.x() - from.x());
  const QPointF at = QLineF(from, to).pointAt(share);
  const QString words = limitOf(ramp.requirement);
  const double aside = 0.5 * QFontMetricsF(painter->font()).horizontalAdvance(words) + 8.0;
  put_words(painter, at - QPointF(aside, 0.0), words, scene().colours);
}

void RequiredLayer::drawHold(QCPPainter* painter, const PixelMap& map, const RequiredHold& hold) const {
  const double y = map.y(hold.low_c) + kBracketBelow;
  const double from = map.x(hold.from_s);
  const double to = map.x(hold.to_s);
  painter->setPen(QPen(scene().colours.temperature_max, kLineWidth));
  painter->drawLine(QPointF(from, y), QPointF(to, y));
  for (const double x : {from, to}) painter->drawLine(QPointF(x, y), QPointF(x, y - kTick));
  const double left = std::max(from, static_cast<double>(map.rect.left()));
  const double right = std::min(to, static_cast<double>(map.rect.right()));
  const QString words = limitOf(hold.requirement);
  const QFontMetricsF metrics(painter->font());
  if (right - left < metrics.horizontalAdvance(words)) return;
  put_words(painter, {0.5 * (left + right), y + 0.5 * metrics.height() + 1.0}, words, scene().colours);
}

}  // namespace soakwright::gui
