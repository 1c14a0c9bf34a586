// SPDX-License-Identifier: GPL-3.0-or-later
// Finds a free place for each label on a chart: the first of its candidates that meets no label placed
// before.
#pragma once

#include <QRectF>
#include <optional>
#include <vector>

namespace soakwright::pdf {

class LabelLayout {
 public:
  explicit LabelLayout(const QRectF& area) : area_(area) {}

  void occupy(const QRectF& box) { taken_.push_back(box); }
  [[nodiscard]] bool is_free(const QRectF& box) const;
  /// The first candidate that is free and within the area; else the first that is free once moved into it;
  /// else the free place nearest to the first. Nothing where none is free: the label is left out rather than
  /// put over another.
  std::optional<QRectF> place(const std::vector<QRectF>& candidates);

 private:
  [[nodiscard]] QRectF moved_inside(QRectF box) const;
  [[nodiscard]] std::optional<QRectF> nearest_free(const QRectF& box) const;

  QRectF area_;
  std::vector<QRectF> taken_;
};

}  // namespace soakwright::pdf
