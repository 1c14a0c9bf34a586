// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/trace_raster.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace soakwright::gui {
namespace {

constexpr double kLevel = 2.5;      ///< device pixels that a line may climb in a column and still be level
constexpr double kDotRadius = 0.8;  ///< logical pixels

/// One channel of a colour over another, `cover` from 0 to 256.
int over(int above, int below, int cover) { return below + ((above - below) * cover >> 8); }

/// std::floor() is a call into the library on processors that are not known to have it.
int floor_of(double value) {
  const int whole = static_cast<int>(value);
  return whole > value ? whole - 1 : whole;
}

}  // namespace

void TraceRaster::begin(const QPainter& painter, const QRect& area) {
  const double scale = painter.deviceTransform().m11();
  const QSize size = (QSizeF(area.size()) * scale).toSize() + QSize(1, 1);
  if (picture_.size() != size) picture_ = QImage(size, QImage::Format_ARGB32_Premultiplied);
  // Taken once: bits() is not for several threads.
  pixels_ = picture_.bits();
  bytes_per_row_ = picture_.bytesPerLine();
  area_ = area;
  scale_ = scale;
}

void TraceRaster::clear(int first, int end) const {
  uchar* row = pixels_ + first * static_cast<qsizetype>(sizeof(QRgb));
  for (int y = 0; y < picture_.height(); ++y, row += bytes_per_row_)
    std::memset(row, 0, static_cast<std::size_t>(end - first) * sizeof(QRgb));
}

void TraceRaster::put(QPainter& painter) const {
  painter.save();
  painter.setRenderHint(QPainter::SmoothPixmapTransform, false);
  const QSizeF size = QSizeF(picture_.size()) / scale_;
  painter.drawImage(QRectF(area_.topLeft(), size), picture_);
  painter.restore();
}

TraceStroke TraceRaster::stroke(const QPen& pen) const {
  TraceStroke stroke;
  stroke.colour = pen.color().rgb();
  const double width = std::max(1.0, pen.widthF() * scale_);
  stroke.half_width = 0.5 * width;
  if (pen.style() == Qt::SolidLine) return stroke;
  double end = 0.0;
  for (const double part : pen.dashPattern()) stroke.dashes.push_back(end += part * width);
  return stroke;
}

void TraceBrush::polyline(const TraceStroke& stroke, const QPointF* points, int count) {
  const double scale = raster_.scale_;
  const QPointF corner = raster_.area_.topLeft();
  const auto in_picture = [&](const QPointF& point) { return (point - corner) * scale; };
  stroke_ = &stroke;
  open_ = false;
  along_ = 0.0;
  if (count == 1) {
    const QPointF at = in_picture(points[0]);
    const double radius = kDotRadius * scale;
    segment(at - QPointF(radius, 0.0), at + QPointF(radius, 0.0));
  }
  QPointF from = in_picture(points[0]);
  for (int i = 1; i < count; ++i) {
    const QPointF to = in_picture(points[i]);
    segment(from, to);
    from = to;
  }
  flush();
}

void TraceBrush::segment(QPointF from, const QPointF& to) {
  if (to.x() < first_ || from.x() >= end_) return;
  // Within one column, as most are: there is nothing to be divided.
  if (const int own = static_cast<int>(from.x()); from.x() >= first_ && to.x() < own + 1) {
    if (open_ && own != column_) flush();
    column_ = own;
    reach(from.y());
    reach(to.y());
    return;
  }
  const double slope = to.x() > from.x() ? (to.y() - from.y()) / (to.x() - from.x()) : 0.0;
  if (from.x() < first_) from = QPointF(first_, from.y() + slope * (first_ - from.x()));
  const int first = static_cast<int>(from.x());
  const int last = static_cast<int>(std::min(to.x(), end_ - 1.0));
  for (int column = first; column <= last; ++column) {
    if (open_ && column != column_) flush();
    column_ = column;
    reach(column == first ? from.y() : from.y() + slope * (column - from.x()));
    reach(to.x() < column + 1 ? to.y() : from.y() + slope * (column + 1 - from.x()));
  }
}

void TraceBrush::reach(double y) {
  low_ = open_ ? std::min(low_, y) : y;
  high_ = open_ ? std::max(high_, y) : y;
  open_ = true;
}

QRgb* TraceBrush::pixel(int x, int y) const {
  return reinterpret_cast<QRgb*>(raster_.pixels_ + y * raster_.bytes_per_row_) + x;
}

/// Puts the column down: whole pixels in between, a part of the first and of the last.
void TraceBrush::flush() {
  if (!open_) return;
  open_ = false;
  const double climb = high_ - low_;
  if (const std::vector<double>& dashes = stroke_->dashes; !dashes.empty()) {
    const double level = std::min(climb, kLevel);
    along_ += std::sqrt(1.0 + level * level);
    while (along_ >= dashes.back()) along_ -= dashes.back();
    const auto part = std::upper_bound(dashes.begin(), dashes.end(), along_) - dashes.begin();
    if (climb < kLevel && part % 2 == 1) return;
  }
  const double top = low_ - stroke_->half_width;
  const double bottom = high_ + stroke_->half_width;
  const int first = std::max(0, floor_of(top));
  const int last = std::min(raster_.picture_.height() - 1, floor_of(bottom));
  if (last < first) return;
  blend(column_, first, std::min(bottom, first + 1.0) - std::max(top, static_cast<double>(first)));
  if (last == first) return;
  for (int y = first + 1; y < last; ++y) *pixel(column_, y) = stroke_->colour;
  blend(column_, last, std::min(bottom, last + 1.0) - last);
}

void TraceBrush::blend(int x, int y, double cover) {
  const int share = std::clamp(static_cast<int>(cover * 256.0), 0, 256);
  QRgb& there = *pixel(x, y);
  const QRgb colour = stroke_->colour;
  const int alpha = over(255, qAlpha(there), share);
  there = qRgba(over(qRed(colour), qRed(there), share), over(qGreen(colour), qGreen(there), share),
                over(qBlue(colour), qBlue(there), share), alpha);
}

}  // namespace soakwright::gui
