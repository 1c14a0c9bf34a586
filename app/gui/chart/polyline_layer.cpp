// SPDX-License-Identifier: GPL-3.0-or-later
// Readings over time as polylines, one for each unbroken part.

#include <cmath>

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {

void PolylineLayer::beginParts(QCPPainter* painter, const PixelMap& map) {
  rasters_ = !painter->modes().testFlag(QCPPainter::pmVectorized);
  painter->setBrush(Qt::NoBrush);
  if (rasters_) raster_.begin(*painter, map.rect);
}

void PolylineLayer::endParts(QCPPainter* painter) {
  if (rasters_) raster_.put(*painter);
}

void PolylineLayer::setPartPen(QCPPainter* painter, const QPen& pen) {
  if (rasters_)
    raster_.setPen(pen);
  else
    painter->setPen(pen);
}

void PolylineLayer::drawPart(QCPPainter* painter, const PixelMap& map, const TracePyramid& pyramid,
                             const Part& part) {
  points_.clear();
  pyramid.append_polyline({part.from_s, part.to_s, 1.0 / map.pixels_per_s, 0.5 / map.pixels_per_c,
                           part.chart->interpolate_max_s, part.chart->record->breaks},
                          points_);
  pixels_.clear();
  const auto put_down = [&] {
    if (pixels_.empty() || (pixels_.size() == 1 && !part.dots)) {
      pixels_.clear();
      return;
    }
    if (rasters_) {
      raster_.polyline(pixels_.data(), static_cast<int>(pixels_.size()));
    } else if (pixels_.size() == 1) {
      painter->drawEllipse(pixels_[0], 0.8, 0.8);
    } else {
      painter->drawPolyline(pixels_.data(), static_cast<int>(pixels_.size()));
    }
    pixels_.clear();
  };
  for (const TracePoint& point : points_) {
    if (std::isnan(point.celsius))
      put_down();
    else
      pixels_.emplace_back(map.x(point.at_s + part.offset_s), map.y(point.celsius));
  }
  put_down();
}

}  // namespace soakwright::gui
