// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/label_layout.h"

#include <algorithm>

namespace soakwright::pdf {

bool LabelLayout::is_free(const QRectF& box) const {
  return area_.contains(box) && std::none_of(taken_.begin(), taken_.end(),
                                             [&](const QRectF& other) { return other.intersects(box); });
}

QRectF LabelLayout::moved_inside(QRectF box) const {
  box.moveLeft(std::max(area_.left(), std::min(box.left(), area_.right() - box.width())));
  box.moveTop(std::max(area_.top(), std::min(box.top(), area_.bottom() - box.height())));
  return box;
}

std::optional<QRectF> LabelLayout::nearest_free(const QRectF& box) const {
  constexpr int kSteps = 12;
  std::optional<QRectF> best;
  double nearest = 0.0;
  for (int row = -kSteps; row <= kSteps; ++row)
    for (int column = -kSteps; column <= kSteps; ++column) {
      const double dx = 0.5 * box.width() * column;
      const double dy = box.height() * row;
      const double distance = dx * dx + dy * dy;
      const QRectF moved = box.translated(dx, dy);
      if ((best && distance >= nearest) || !is_free(moved)) continue;
      best = moved;
      nearest = distance;
    }
  return best;
}

std::optional<QRectF> LabelLayout::place(const std::vector<QRectF>& candidates) {
  std::optional<QRectF> found;
  for (const bool moved : {false, true})
    for (const QRectF& candidate : candidates) {
      const QRectF box = moved ? moved_inside(candidate) : candidate;
      if (!found && is_free(box)) found = box;
    }
  if (!found) found = nearest_free(moved_inside(candidates.front()));
  if (found) taken_.push_back(*found);
  return found;
}

}  // namespace soakwright::pdf
