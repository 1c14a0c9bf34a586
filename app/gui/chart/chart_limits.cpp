// SPDX-License-Identifier: GPL-3.0-or-later
// A limit of the procedure dragged up or down on the chart. What becomes of it is not the chart's to say.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_pane.h"

namespace soakwright::gui {
namespace {

constexpr double kNearLimit = 4.0;  ///< pixels
constexpr double kMoves = 4.0;      ///< pixels; less is a click

}  // namespace

void ChartPane::setMovableLimits(std::vector<LimitLine> limits) { movable_ = std::move(limits); }

std::optional<LimitLine> ChartPane::limitNear(const QPointF& position) const {
  const PixelMap map(*traces_rect_);
  if (!map.rect.contains(position.toPoint())) return std::nullopt;
  std::optional<LimitLine> nearest;
  double distance = kNearLimit;
  for (const LimitLine& limit : movable_) {
    if (position.x() < map.x(limit.from_s) || position.x() > map.x(limit.to_s)) continue;
    const double away = std::abs(map.y(limit.level_c) - position.y());
    if (away > distance) continue;
    distance = away;
    nearest = limit;
  }
  return nearest;
}

void ChartPane::dragLimit(const QPointF& position) {
  const double up = pressed_at_.y() - position.y();
  if (!scene_.moved && std::abs(up) < kMoves) return;
  const PixelMap map(*traces_rect_);
  const double seen = std::clamp(pressed_limit_.level_c + up / map.pixels_per_c, map.low_c, map.high_c);
  const double level_c = whole_degree(pressed_limit_, seen);
  if (scene_.moved && scene_.moved->level_c == level_c) return;
  scene_.moved = MovedLimit{pressed_limit_, level_c};
  replot();
}

void ChartPane::releaseLimit(const QPointF& position) {
  if (!scene_.moved) return click(position);
  // It stays where it was let go until what it means is known.
  if (scene_.moved->level_c == pressed_limit_.level_c) return letGoOfLimit();
  emit limitMoved(pressed_limit_, scene_.moved->level_c);
}

void ChartPane::letGoOfLimit() {
  if (drag_ == Drag::limit) drag_ = Drag::none;
  if (!scene_.moved) return;
  scene_.moved.reset();
  replot();
}

}  // namespace soakwright::gui
