// SPDX-License-Identifier: GPL-3.0-or-later
// Small marks along the traces and beside their names, so that traces part without colour.
#pragma once

#include <QColor>
#include <QImage>
#include <QPointF>
#include <cstddef>
#include <map>
#include <tuple>

class QCPPainter;

namespace soakwright::gui {

class TraceMarks {
 public:
  /// Different shapes; those of higher numbers are the same again.
  static constexpr std::size_t kShapes = 6;

  /// The mark about `at`. Into a picture it is stamped: drawing hundreds anew in every frame takes longer
  /// than all traces.
  void draw(QCPPainter* painter, const QPointF& at, std::size_t shape, const QColor& line,
            const QColor& inside);

 private:
  using Look = std::tuple<std::size_t, QRgb, QRgb, double>;  ///< shape, line, inside, device pixels per pixel
  const QImage& stamp(const Look& look);
  std::map<Look, QImage> stamps_;
};

}  // namespace soakwright::gui
