// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/trace_raster.h"

#include <algorithm>
#include <cmath>

namespace soakwright::gui {
namespace {

constexpr double kLevel = 2.5;      ///< device pixels that a line may climb in a column and still be level
constexpr double kDotRadius = 0.8;  ///< logical pixels

/// One channel of a colour over another, `cover` from 0 to 256.
int over(int above, int below, int cover) { return below + ((above - below) * cover >> 8); }

}  // namespace

void TraceRaster::begin(const QPainter& painter, const QRect& area) {
  const double scale = painter.deviceTransform().m11();
  const QSize size = (QSizeF(area.size()) * scale).toSize() + QSize(1, 1);
  if (picture_.size() != size) picture_ = QImage(size, QImage::Format_ARGB32_Premultiplied);
  picture_.fill(Qt::transparent);
  area_ = area;
  scale_ = scale;
}

void TraceRaster::setPen(const QPen& pen) {
  colour_ = pen.color().rgb();
  const double width = std::max(1.0, pen.widthF() * scale_);
  half_width_ = 0.5 * width;
  dashes_.clear();
  if (pen.style() == Qt::SolidLine) return;
  double end = 0.0;
  for (const double part : pen.dashPattern()) dashes_.push_back(end += part * width);
}

void TraceRaster::polyline(const QPointF* points, int count) {
  const auto in_picture = [this](const QPointF& point) {
    return QPointF((point.x() - area_.left()) * scale_, (point.y() - area_.top()) * scale_);
  };
  open_ = false;
  along_ = 0.0;
  if (count == 1) {
    const QPointF at = in_picture(points[0]);
    const double radius = kDotRadius * scale_;
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

void TraceRaster::segment(QPointF from, const QPointF& to) {
  if (to.x() < 0.0 || from.x() >= picture_.width()) return;
  const double slope = to.x() > from.x() ? (to.y() - from.y()) / (to.x() - from.x()) : 0.0;
  if (from.x() < 0.0) from = QPointF(0.0, from.y() - slope * from.x());
  const int first = static_cast<int>(from.x());
  const int last = static_cast<int>(std::min(to.x(), picture_.width() - 1.0));
  for (int column = first; column <= last; ++column) {
    if (open_ && column != column_) flush();
    column_ = column;
    reach(column == first ? from.y() : from.y() + slope * (column - from.x()));
    reach(to.x() < column + 1 ? to.y() : from.y() + slope * (column + 1 - from.x()));
  }
}

void TraceRaster::reach(double y) {
  low_ = open_ ? std::min(low_, y) : y;
  high_ = open_ ? std::max(high_, y) : y;
  open_ = true;
}

/// Puts the column down: whole pixels in between, a part of the first and of the last.
void TraceRaster::flush() {
  if (!open_) return;
  open_ = false;
  const double climb = high_ - low_;
  if (!dashes_.empty()) {
    const double level = std::min(climb, kLevel);
    along_ += std::sqrt(1.0 + level * level);
    while (along_ >= dashes_.back()) along_ -= dashes_.back();
    const auto part = std::upper_bound(dashes_.begin(), dashes_.end(), along_) - dashes_.begin();
    if (climb < kLevel && part % 2 == 1) return;
  }
  const double top = low_ - half_width_;
  const double bottom = high_ + half_width_;
  const int first = std::max(0, static_cast<int>(std::floor(top)));
  const int last = std::min(picture_.height() - 1, static_cast<int>(std::floor(bottom)));
  if (last < first) return;
  blend(column_, first, std::min(bottom, first + 1.0) - std::max(top, static_cast<double>(first)));
  if (last == first) return;
  uchar* pixel = picture_.bits() + static_cast<qsizetype>(first + 1) * picture_.bytesPerLine() +
                 static_cast<qsizetype>(column_) * static_cast<qsizetype>(sizeof(QRgb));
  for (int y = first + 1; y < last; ++y, pixel += picture_.bytesPerLine())
    *reinterpret_cast<QRgb*>(pixel) = colour_;
  blend(column_, last, std::min(bottom, last + 1.0) - last);
}

void TraceRaster::blend(int x, int y, double cover) {
  const int share = std::clamp(static_cast<int>(cover * 256.0), 0, 256);
  auto& pixel = reinterpret_cast<QRgb*>(picture_.scanLine(y))[x];
  const int alpha = over(255, qAlpha(pixel), share);
  pixel = qRgba(over(qRed(colour_), qRed(pixel), share), over(qGreen(colour_), qGreen(pixel), share),
                over(qBlue(colour_), qBlue(pixel), share), alpha);
}

void TraceRaster::put(QPainter& painter) const {
  painter.save();
  painter.setRenderHint(QPainter::SmoothPixmapTransform, false);
  const QSizeF size = QSizeF(picture_.size()) / scale_;
  painter.drawImage(QRectF(area_.topLeft(), size), picture_);
  painter.restore();
}

}  // namespace soakwright::gui
