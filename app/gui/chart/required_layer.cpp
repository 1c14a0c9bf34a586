// SPDX-License-Identifier: GPL-3.0-or-later
// The required cycle behind the traces: a ramp as the line that no thermocouple may cross, the hold time as a
// bracket under its range. Their words stand among those of the layer of words.

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {
namespace {

constexpr double kLineWidth = 1.3;
constexpr double kBracketBelow = 14.0;  ///< pixels below the range, clear of the bar of what was reached
constexpr double kTick = 5.0;

}  // namespace

double required_hold_y(const PixelMap& map, const RequiredHold& hold) {
  return map.y(hold.low_c) + kBracketBelow;
}

void RequiredLayer::draw(QCPPainter* painter) {
  const auto& required = scene().required;
  if (!scene().shows_required || !required || !scene().chart() || !axisRect()) return;
  const PixelMap map(*axisRect());
  for (const RequiredRamp& ramp : required->ramps) drawRamp(painter, map, ramp);
  for (const RequiredHold& hold : required->holds) drawHold(painter, map, hold);
}

void RequiredLayer::drawRamp(QCPPainter* painter, const PixelMap& map, const RequiredRamp& ramp) const {
  const QPointF from(map.x(ramp.from_s), map.y(ramp.from_c));
  const QPointF to(map.x(ramp.to_s), map.y(ramp.to_c));
  painter->setPen(QPen(scene().colours.temperature_max, kLineWidth, Qt::DashDotLine));
  painter->drawLine(from, to);
}

void RequiredLayer::drawHold(QCPPainter* painter, const PixelMap& map, const RequiredHold& hold) const {
  const double y = required_hold_y(map, hold);
  const double from = map.x(hold.from_s);
  const double to = map.x(hold.to_s);
  painter->setPen(QPen(scene().colours.temperature_max, kLineWidth));
  painter->drawLine(QPointF(from, y), QPointF(to, y));
  for (const double x : {from, to}) painter->drawLine(QPointF(x, y), QPointF(x, y - kTick));
}

}  // namespace soakwright::gui
