// SPDX-License-Identifier: GPL-3.0-or-later
// Readings over time as polylines, one for each unbroken part, and their name above them. Into a picture they
// are drawn in strips side by side, each on a thread.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "core/system/parallel_for.h"

namespace soakwright::gui {
namespace {

constexpr std::size_t kMostThreads = 4;
constexpr std::size_t kStripsPerThread = 2;  ///< where one thread is kept waiting, another draws its strip

/// Calls put(points, count) for each unbroken part of the line.
template <typename Put>
void lines_of(const std::vector<TracePoint>& points, const PixelMap& map, double offset_s,
              std::vector<QPointF>& pixels, const Put& put) {
  const auto put_down = [&] {
    if (!pixels.empty()) put(pixels);
    pixels.clear();
  };
  pixels.clear();
  for (const TracePoint& point : points) {
    if (std::isnan(point.celsius))
      put_down();
    else
      pixels.emplace_back(map.x(point.at_s + offset_s), map.y(point.celsius));
  }
  put_down();
}

}  // namespace

void PolylineLayer::beginParts(QCPPainter* painter, const PixelMap& map) {
  rasters_ = !painter->modes().testFlag(QCPPainter::pmVectorized);
  painter->setBrush(Qt::NoBrush);
  painter->setClipRect(map.rect);
  drawings_.clear();
  if (!rasters_) return;
  raster_.begin(*painter, map.rect);
  const int columns = raster_.columns();
  const std::size_t threads = std::min(machine_threads(), kMostThreads);
  strips_.resize(threads == 1 ? 1 : kStripsPerThread * threads);
  for (std::size_t i = 0; i < strips_.size(); ++i) {
    strips_[i].first = columns * static_cast<int>(i) / static_cast<int>(strips_.size());
    strips_[i].end = columns * static_cast<int>(i + 1) / static_cast<int>(strips_.size());
  }
}

void PolylineLayer::endParts(QCPPainter* painter, const PixelMap& map) {
  if (!rasters_) return;
  parallel_for(strips_.size(), [&](std::size_t i) { drawStrip(map, strips_[i]); });
  raster_.put(*painter);
}

int PolylineLayer::nameHeight(const QFont& font) { return QFontMetrics(font).height() + 3; }

QRect PolylineLayer::clipRect() const { return axisRect() ? axisRect()->outerRect() : QRect(); }

void PolylineLayer::drawName(QCPPainter* painter, const PixelMap& map, const QString& name) const {
  const QFontMetricsF metrics(painter->font());
  const double width = map.rect.width() - 6.0;
  const QRectF box(map.rect.left() + 3.0, map.rect.top() - metrics.height() - 2.0, width, metrics.height());
  painter->setClipRect(clipRect());
  painter->setPen(scene().colours.faint_ink);
  painter->drawText(box, Qt::AlignLeft | Qt::AlignVCenter, metrics.elidedText(name, Qt::ElideMiddle, width));
}

void PolylineLayer::setPartPen(QCPPainter* painter, const QPen& pen) {
  if (rasters_)
    stroke_ = raster_.stroke(pen);
  else
    painter->setPen(pen);
}

void PolylineLayer::drawPart(QCPPainter* painter, const PixelMap& map, const TracePyramid& pyramid,
                             const Part& part) {
  if (rasters_) {
    drawings_.push_back({&pyramid, part, stroke_});
    return;
  }
  std::vector<TracePoint> points;
  std::vector<QPointF> pixels;
  pyramid.append_polyline({part.from_s, part.to_s, 1.0 / map.pixels_per_s, 0.5 / map.pixels_per_c,
                           part.chart->interpolate_max_s, part.chart->record->breaks},
                          points);
  lines_of(points, map, part.offset_s, pixels, [&](const std::vector<QPointF>& line) {
    if (line.size() > 1)
      painter->drawPolyline(line.data(), static_cast<int>(line.size()));
    else if (part.dots)
      painter->drawEllipse(line[0], 0.8, 0.8);
  });
}

/// Every part, as far as it lies in the strip.
void PolylineLayer::drawStrip(const PixelMap& map, Strip& strip) const {
  raster_.clear(strip.first, strip.end);
  TraceBrush brush(raster_, strip.first, strip.end);
  const auto at_s = [&](int column) {
    return map.from_s + (raster_.left_of(column) - map.left) / map.pixels_per_s;
  };
  for (const Drawing& drawing : drawings_) {
    const Part& part = drawing.part;
    // A line that comes in from beside the strip begins no farther away than this.
    const double reach_s = part.chart->interpolate_max_s;
    const double from_s = std::max(part.from_s, at_s(strip.first) - part.offset_s - reach_s);
    const double to_s = std::min(part.to_s, at_s(strip.end) - part.offset_s + reach_s);
    if (from_s >= to_s) continue;
    strip.points.clear();
    drawing.pyramid->append_polyline(
        {from_s, to_s, 1.0 / map.pixels_per_s, 0.5 / map.pixels_per_c, reach_s, part.chart->record->breaks},
        strip.points);
    lines_of(strip.points, map, part.offset_s, strip.pixels, [&](const std::vector<QPointF>& line) {
      if (line.size() > 1 || part.dots)
        brush.polyline(drawing.stroke, line.data(), static_cast<int>(line.size()));
    });
  }
}

}  // namespace soakwright::gui
