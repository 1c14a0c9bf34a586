// SPDX-License-Identifier: GPL-3.0-or-later
// Draws polylines over time into a picture, pixel column by pixel column. A log of a day has 48 traces of
// thousands of points in view: Qt's stroker takes a quarter of a second for them, this a few milliseconds.
//
// In every column the picture reaches from the lowest to the highest point of the line, and half the pen's
// width beyond. A gap of a dash is left out only where the line is level, so that it hides no peak.
#pragma once

#include <QImage>
#include <QPainter>
#include <QPen>
#include <vector>

namespace soakwright::gui {

/// A pen at the resolution of one picture.
struct TraceStroke {
  QRgb colour = 0;
  double half_width = 0.75;    ///< device pixels
  std::vector<double> dashes;  ///< ends of dash, gap, dash …; device pixels; empty: solid
};

class TraceRaster {
 public:
  /// A picture of `area` at the painter's own resolution; to be cleared, each column once, before it is drawn
  /// in.
  void begin(const QPainter& painter, const QRect& area);
  /// Empties the columns from `first` to before `end`.
  void clear(int first, int end) const;
  void put(QPainter& painter) const;

  [[nodiscard]] TraceStroke stroke(const QPen& pen) const;
  /// Pixel columns of the picture.
  [[nodiscard]] int columns() const { return picture_.width(); }
  /// Where a column begins, in the painter's coordinates.
  [[nodiscard]] double left_of(int column) const { return area_.left() + column / scale_; }

 private:
  friend class TraceBrush;
  QImage picture_;
  uchar* pixels_ = nullptr;
  qsizetype bytes_per_row_ = 0;
  QRect area_;
  double scale_ = 1.0;
};

/// Draws into the columns from `first` to before `end`. Several may draw at once, each into columns of its
/// own.
class TraceBrush {
 public:
  TraceBrush(const TraceRaster& raster, int first, int end) : raster_(raster), first_(first), end_(end) {}
  /// Points in the painter's coordinates, from left to right. One point alone is a dot.
  void polyline(const TraceStroke& stroke, const QPointF* points, int count);

 private:
  void segment(QPointF from, const QPointF& to);
  void reach(double y);
  void flush();
  void blend(int x, int y, double cover);
  [[nodiscard]] QRgb* pixel(int x, int y) const;

  const TraceRaster& raster_;
  int first_, end_;
  const TraceStroke* stroke_ = nullptr;
  int column_ = 0;  ///< the one being drawn
  double low_ = 0.0, high_ = 0.0;
  bool open_ = false;   ///< the column has something in it
  double along_ = 0.0;  ///< of the dashes, device pixels
};

}  // namespace soakwright::gui
