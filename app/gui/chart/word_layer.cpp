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

  const std::vector<ChartLevel> levels = scene().levels();
  // Levels above the grid: one at a round temperature would vanish in a line of it.
  for (const ChartLevel& level : levels) {
    const bool hard = level.kind == ChartLevel::Kind::temperature_max;
    painter->setPen(QPen(hard ? colours.temperature_max : colours.level, hard ? 1.6 : 1.2,
                         hard ? Qt::SolidLine : Qt::DashLine));
    painter->drawLine(
        QPointF(std::max(map.x(level.from_s), map.left), map.y(level.level_c)),
        QPointF(std::min(map.x(level.to_s), map.left + map.rect.width()), map.y(level.level_c)));
  }

  std::vector<QRectF> taken;
  // Once each: several stages often share a level.
  std::vector<std::pair<QString, double>> named;
  const QFontMetricsF metrics(painter->font());
  const auto put_label = [&](double at_s, double celsius, const std::string& said, const QColor& ink) {
    const QString text = pdf::shown_text(said);
    const double width = metrics.horizontalAdvance(text) + 6;
    const double right = map.rect.right() - width;
    const double first = std::clamp(map.x(at_s) + 3.0, map.left + 3.0, std::max(map.left + 3.0, right));
    if (said.empty() || map.x(at_s) > map.rect.right() || map.y(celsius) < map.rect.top() - 1.0 ||
        map.y(celsius) > map.rect.bottom() + metrics.height())
      return;
    if (std::find(named.begin(), named.end(), std::pair{text, celsius}) != named.end()) return;
    named.emplace_back(text, celsius);
    // Where the place is taken, above it, below it, or further along.
    for (const double x : {first, std::min(right, first + 0.33 * map.rect.width()), right}) {
      for (const double y : {map.y(celsius) - 2.0, map.y(celsius) + metrics.height() + 2.0}) {
        const QRectF box(x, y - metrics.height(), width, metrics.height());
        if (!QRectF(map.rect).adjusted(-1, -1, 1, 1).contains(box)) continue;
        if (std::any_of(taken.begin(), taken.end(),
                        [&box](const QRectF& one) { return one.intersects(box); }))
          continue;
        taken.push_back(box);
        label(painter, {x, y}, text, ink, colours.background);
        return;
      }
    }
  };
  for (const ChartLevel& level : levels)
    put_label(level.from_s, level.level_c, level.text,
              level.kind == ChartLevel::Kind::temperature_max ? colours.temperature_max : colours.faint_ink);
  for (const ChartRange& range : scene().ranges())
    put_label(range.from_s, range.high_c.value_or(range.low_c), range.text,
              mixed(colours.range_edge, colours.ink, 0.6));
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
