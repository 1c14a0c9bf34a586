// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/label_layout.h"

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

QRectF LabelLayout::place(const std::vector<QRectF>& candidates) {
  for (const bool moved : {false, true})
    for (const QRectF& candidate : candidates) {
      const QRectF box = moved ? moved_inside(candidate) : candidate;
      if (!is_free(box)) continue;
      taken_.push_back(box);
      return box;
    }
  const QRectF forced = moved_inside(candidates.front());
  taken_.push_back(forced);
  return forced;
}

}  // namespace soakwright::pdf
