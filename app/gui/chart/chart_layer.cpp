// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {

PixelMap::PixelMap(const QCPAxisRect& axis_rect) : rect(axis_rect.rect()) {
  const QCPRange time = axis_rect.axis(QCPAxis::atBottom)->range();
  const QCPRange celsius = axis_rect.axis(QCPAxis::atLeft)->range();
  from_s = time.lower;
  to_s = time.upper;
  low_c = celsius.lower;
  high_c = celsius.upper;
  left = rect.left();
  bottom = rect.bottom();
  pixels_per_s = rect.width() / time.size();
  pixels_per_c = rect.height() / celsius.size();
}

ChartLayer::ChartLayer(QCustomPlot* plot, const QString& layer, QCPAxisRect* rect, const ChartScene* scene)
    : QCPLayerable(plot, layer), rect_(rect), scene_(scene) {}

QRect ChartLayer::clipRect() const { return rect_ ? rect_->rect() : QRect(); }

void ChartLayer::applyDefaultAntialiasingHint(QCPPainter* painter) const { painter->setAntialiasing(true); }

}  // namespace soakwright::gui
