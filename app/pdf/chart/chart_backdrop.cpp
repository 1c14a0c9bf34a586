// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_backdrop.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

namespace soakwright::pdf {
namespace {

/// Loading and opening limits are said of one row: a short line at that end of the record.
constexpr double kShortLine = 0.10;

QPen level_pen(const ChartLevel& level, const Scale& scale) {
  QPen pen(level.kind == ChartLevel::Kind::temperature_max ? colour::kNotMet : colour::kFaintInk,
           scale.mm(0.22));
  switch (level.kind) {
    case ChartLevel::Kind::temperature_max:
      pen.setWidthF(scale.mm(0.35));
      pen.setDashPattern({14.0, 4.0});
      break;
    case ChartLevel::Kind::start_temperature_max:
    case ChartLevel::Kind::end_temperature_max:
      pen.setDashPattern({6.0, 3.0});
      break;
    case ChartLevel::Kind::evaluated_above:
    case ChartLevel::Kind::evaluated_below:
      pen.setDashPattern({2.0, 4.0});
      break;
  }
  return pen;
}

/// Left and right end of a level's line.
std::pair<double, double> level_ends(const ChartLevel& level, const ChartMap& map) {
  double from = map.x_within(level.from_s);
  double to = map.x_within(level.to_s);
  const double length = kShortLine * map.plot().width();
  if (level.kind == ChartLevel::Kind::start_temperature_max) to = std::min(to, from + length);
  if (level.kind == ChartLevel::Kind::end_temperature_max) from = std::max(from, to - length);
  return {from, to};
}

bool within(const ChartMap& map, double celsius) {
  return celsius >= map.window().low_c && celsius <= map.window().high_c;
}

QRectF range_box(const ChartRange& range, const ChartMap& map) {
  const double left = map.x_within(range.from_s);
  const double right = map.x_within(range.to_s);
  const double bottom = std::clamp(map.y(range.low_c), map.plot().top(), map.plot().bottom());
  const double top =
      range.high_c ? std::clamp(map.y(*range.high_c), map.plot().top(), map.plot().bottom()) : bottom;
  return {QPointF(left, top), QPointF(right, bottom)};
}

}  // namespace

void paint_ranges(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                  bool filled) {
  for (const ChartRange& range : chart.ranges) {
    if (!map.shows(range.from_s, range.to_s)) continue;
    const QRectF box = range_box(range, map);
    if (filled && range.reached && range.high_c) painter.fillRect(box, colour::kRange);
    QPen pen(colour::kRangeEdge, scale.mm(0.25));
    if (!range.reached) pen.setDashPattern({3.0, 3.0});
    painter.setPen(pen);
    for (const auto& edge : {std::optional{range.low_c}, range.high_c})
      if (edge && within(map, *edge))
        painter.drawLine(QPointF(box.left(), map.y(*edge)), QPointF(box.right(), map.y(*edge)));
  }
}

void paint_levels(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart) {
  for (const ChartLevel& level : chart.levels) {
    if (!within(map, level.level_c) || !map.shows(level.from_s, level.to_s)) continue;
    const auto [from, to] = level_ends(level, map);
    painter.setPen(level_pen(level, scale));
    painter.drawLine(QPointF(from, map.y(level.level_c)), QPointF(to, map.y(level.level_c)));
  }
}

void paint_words(QPainter& painter, const std::optional<QRectF>& place, const QString& words,
                 const QColor& ink) {
  if (!place) return;
  const QRectF& box = *place;
  painter.fillRect(box, colour::kPdf);
  painter.setPen(ink);
  painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, words);
}

void paint_backdrop_words(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                          LabelLayout& places, double points) {
  const QFont font = scale.font(points);
  const QFontMetricsF metrics(font);
  painter.setFont(font);
  const double gap = scale.mm(0.5);
  const auto box_of = [&](const QString& words) {
    return QRectF(0, 0, metrics.horizontalAdvance(words) + scale.mm(1.2), metrics.height());
  };
  for (const ChartLevel& level : chart.levels) {
    if (!within(map, level.level_c) || !map.shows(level.from_s, level.to_s)) continue;
    const QString words = text(level.text);
    const QRectF box = box_of(words);
    const auto [from, to] = level_ends(level, map);
    const double y = map.y(level.level_c);
    const double left = from + gap;
    const double right = to - box.width() - gap;
    const double middle = 0.5 * (from + to - box.width());
    const double above = y - box.height() - gap;
    const double below = y + gap;
    const bool at_end = level.kind == ChartLevel::Kind::end_temperature_max;
    std::vector<QRectF> candidates;
    for (const double x :
         at_end ? std::vector<double>{right, left, middle} : std::vector<double>{left, middle, right})
      for (const double top : {above, below}) candidates.push_back(box.translated(x, top));
    paint_words(painter, places.place(candidates), words,
                level.kind == ChartLevel::Kind::temperature_max ? colour::kNotMet : colour::kFaintInk);
  }
  for (const ChartRange& range : chart.ranges) {
    if (!map.shows(range.from_s, range.to_s)) continue;
    if (!within(map, range.low_c) && !(range.high_c && within(map, *range.high_c))) continue;
    const QString words = text(range.text);
    const QRectF box = box_of(words);
    const QRectF drawn = range_box(range, map);
    // After a hold the traces fall: to the right of the range's upper edge the sheet is usually empty.
    const std::vector<QRectF> candidates = {
        box.translated(drawn.right() + 2 * gap, drawn.top() - 0.5 * box.height()),
        box.translated(drawn.right() - box.width() - gap, drawn.top() - box.height() - gap),
        box.translated(drawn.left() + gap, drawn.top() - box.height() - gap),
        box.translated(drawn.left() + gap, drawn.bottom() + gap),
        box.translated(drawn.right() - box.width() - gap, drawn.bottom() + gap),
        box.translated(drawn.left() - box.width() - 2 * gap, drawn.top() - 0.5 * box.height())};
    paint_words(painter, places.place(candidates), words, colour::kRangeEdge.darker(150));
  }
}

}  // namespace soakwright::pdf
