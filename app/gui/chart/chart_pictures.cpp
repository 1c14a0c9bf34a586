// SPDX-License-Identifier: GPL-3.0-or-later
// The chart as a picture: in points, in lines, and the words in it.

#include <QBuffer>
#include <QGuiApplication>
#include <QSvgGenerator>

#include "app/gui/chart/chart_labels.h"
#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_pane.h"

namespace soakwright::gui {

QPixmap ChartPane::picture(double scale) const { return plot_->toPixmap(0, 0, scale); }

std::vector<ChartLabel> ChartPane::labels() const {
  return chart_labels(scene_, PixelMap(*traces_rect_), QFontMetricsF(QGuiApplication::font()));
}

QByteArray ChartPane::vectorPicture() const {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator svg;
  svg.setOutputDevice(&buffer);
  svg.setResolution(plot_->logicalDpiX());  // of what its letters are measured for
  svg.setSize(plot_->size());
  svg.setViewBox(plot_->rect());
  svg.setTitle(tr("Chart"));
  QCPPainter painter;
  if (!painter.begin(&svg)) return {};
  painter.setMode(QCPPainter::pmVectorized);
  painter.setMode(QCPPainter::pmNoCaching);
  // Black on nothing would vanish on a dark page.
  painter.fillRect(plot_->rect(), scene_.colours.background);
  plot_->toPainter(&painter, plot_->width(), plot_->height());
  painter.end();
  return bytes;
}

}  // namespace soakwright::gui
