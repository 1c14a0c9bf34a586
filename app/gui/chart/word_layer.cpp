// SPDX-License-Identifier: GPL-3.0-or-later
// What ranges, levels and notes are called: above the grid, whose lines would strike the words through.

#include <algorithm>

#include "app/gui/chart/chart_layers.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

void label(QPainter* painter, const QPointF& at, const QString& text, const QColor& ink,
           const QColor& background) {
  const QFontMetricsF metrics(painter->font());
  const QRectF box(at.x(), at.y() - metrics.height(), metrics.horizontalAdvance(text) + 6, metrics.height());
  QColor veil = background;
  veil.setAlphaF(0.8F);
  painter->fillRect(box, veil);
  painter->setPen(ink);
  painter->drawText(box, Qt::AlignCenter, text);
}

}  // namespace

void WordLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  if (!chart || !axisRect()) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;

  // Each place only once: several stages often share a level.
  std::vector<QRectF> taken;
  const QFontMetricsF metrics(painter->font());
  const auto put_label = [&](double at_s, double celsius, const std::string& said, const QColor& ink) {
    const QString text = pdf::shown_text(said);
    const QPointF at(std::max(map.x(at_s), map.left) + 3.0, map.y(celsius) - 2.0);
    const QRectF box(at.x(), at.y() - metrics.height(), metrics.horizontalAdvance(text) + 6,
                     metrics.height());
    if (!QRectF(map.rect).contains(box)) return;
    if (std::any_of(taken.begin(), taken.end(), [&box](const QRectF& one) { return one.intersects(box); }))
      return;
    taken.push_back(box);
    label(painter, at, text, ink, colours.background);
  };
  for (const ChartLevel& level : chart->levels)
    put_label(level.from_s, level.level_c, level.text,
              level.kind == ChartLevel::Kind::temperature_max ? colours.temperature_max : colours.faint_ink);
  for (const ChartRange& range : chart->ranges)
    put_label(range.from_s, range.high_c.value_or(range.low_c), range.text, colours.range_edge);
  // What people noted and where spares took over, at the top.
  const double top_c = map.low_c + (map.bottom - map.rect.top() - metrics.height() - 6.0) / map.pixels_per_c;
  for (const auto* notes : {&chart->remarks, &chart->takeovers, &chart->deviations}) {
    for (const ChartNote& note : *notes) {
      if (note.at_s < map.from_s || note.at_s > map.to_s) continue;
      put_label(note.at_s, top_c, note.text, colours.note);
    }
  }
}

}  // namespace soakwright::gui
