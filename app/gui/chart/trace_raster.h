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

class TraceRaster {
 public:
  /// An empty picture of `area` at the painter's own resolution.
  void begin(const QPainter& painter, const QRect& area);
  /// Colour, width and dashes of what comes next.
  void setPen(const QPen& pen);
  /// Points in the painter's coordinates, from left to right. One point alone is a dot.
  void polyline(const QPointF* points, int count);
  void put(QPainter& painter) const;

 private:
  void segment(QPointF from, const QPointF& to);
  void reach(double y);
  void flush();
  void blend(int x, int y, double cover);

  QImage picture_;
  QRect area_;
  double scale_ = 1.0;
  QRgb colour_ = 0;
  double half_width_ = 0.75;    ///< device pixels
  std::vector<double> dashes_;  ///< ends of dash, gap, dash …; device pixels; empty: solid
  int column_ = 0;              ///< the one being drawn
  double low_ = 0.0, high_ = 0.0;
  bool open_ = false;   ///< the column has something in it
  double along_ = 0.0;  ///< of the dashes, device pixels
};

}  // namespace soakwright::gui
