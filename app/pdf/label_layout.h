// SPDX-License-Identifier: GPL-3.0-or-later
// Finds a free place for each label on a chart: the first of its candidates that meets no label placed
// before.
#pragma once

#include <QRectF>
#include <vector>

namespace soakwright::pdf {

class LabelLayout {
 public:
  explicit LabelLayout(const QRectF& area) : area_(area) {}

  void occupy(const QRectF& box) { taken_.push_back(box); }
  [[nodiscard]] bool is_free(const QRectF& box) const;
  /// The first candidate that is free and within the area; else the first that is free once moved into it;
  /// else the first of all, moved.
  QRectF place(const std::vector<QRectF>& candidates);

 private:
  [[nodiscard]] QRectF moved_inside(QRectF box) const;

  QRectF area_;
  std::vector<QRectF> taken_;
};

}  // namespace soakwright::pdf
