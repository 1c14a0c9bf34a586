// SPDX-License-Identifier: GPL-3.0-or-later
// What is required, behind the traces: ranges, what of them was reached, levels, and where findings stand.

#include <algorithm>

#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {
namespace {

constexpr double kReachedBar = 5.0;

void draw_range(QPainter* painter, const PixelMap& map, const ChartRange& range,
                const ChartColours& colours) {
  const double top = range.high_c ? map.y(*range.high_c) : map.rect.top() - 2.0;
  const QRectF box(QPointF(map.x(range.from_s), top), QPointF(map.x(range.to_s), map.y(range.low_c)));
  const QRectF seen = box.intersected(QRectF(map.rect).adjusted(-2, -2, 2, 2));
  if (seen.isEmpty()) return;
  if (range.reached) {
    painter->fillRect(seen, colours.range);
  } else {
    painter->fillRect(seen, QBrush(mixed(colours.range_edge, colours.background, 0.35), Qt::BDiagPattern));
  }
  QPen edge(colours.range_edge, 1.0, range.reached ? Qt::SolidLine : Qt::DashLine);
  edge.setCosmetic(true);
  painter->setPen(edge);
  painter->drawLine(QPointF(seen.left(), map.y(range.low_c)), QPointF(seen.right(), map.y(range.low_c)));
  if (range.high_c) painter->drawLine(QPointF(seen.left(), top), QPointF(seen.right(), top));
}

/// The core as a full bar along the lower edge, other in_range as a thin one, those disregarded hatched.
void draw_reached(QPainter* painter, const PixelMap& map, const StageCourse& stage, double low_c,
                  const ChartColours& colours) {
  const double y = map.y(low_c);
  const auto bar = [&](const TimeSpan& span, double height, const QBrush& brush) {
    painter->fillRect(
        QRectF(map.x(span.first), y, std::max(1.0, map.x(span.second) - map.x(span.first)), height), brush);
  };
  for (const TimeSpan& span : stage.in_range) bar(span, 0.5 * kReachedBar, colours.range_edge);
  for (const TimeSpan& span : stage.edge_crossings)
    bar(span, kReachedBar, QBrush(colours.faint_ink, Qt::Dense4Pattern));
  if (stage.continuous) bar(*stage.continuous, kReachedBar, colours.range_edge);
}

}  // namespace

void BackdropLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  if (!chart || !axisRect()) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;

  // What lies outside the evaluated part is greyed.
  const QColor outside = mixed(colours.ink, colours.background, 0.05);
  if (chart->evaluated_from_s > chart->begin_s)
    painter->fillRect(QRectF(QPointF(map.x(chart->begin_s), map.rect.top()),
                             QPointF(map.x(chart->evaluated_from_s), map.rect.bottom() + 1)),
                      outside);
  if (chart->evaluated_to_s < chart->end_s)
    painter->fillRect(QRectF(QPointF(map.x(chart->evaluated_to_s), map.rect.top()),
                             QPointF(map.x(chart->end_s), map.rect.bottom() + 1)),
                      outside);

  painter->setAntialiasing(false);
  for (const ChartMark& mark : chart->marks) {
    if (mark.kind == Finding::Kind::note) continue;
    const double width = map.x(mark.to_s) - map.x(mark.from_s);
    const QColor ink = colours.of_finding(mark.kind);
    // The field of the chosen one only, or all would be one field.
    const bool chosen = scene().mark && chart->marks.data() + *scene().mark == &mark;
    if (chosen && width >= 1.0)
      painter->fillRect(QRectF(map.x(mark.from_s), map.rect.top() + 3.0, width, map.rect.height()),
                        mixed(ink, colours.background, colours.dark ? 0.22 : 0.14));
  }
  const std::vector<ChartRange> ranges = scene().ranges();
  for (const ChartRange& range : ranges) draw_range(painter, map, range, colours);
  // A bracket along the top for each finding, over the ranges.
  for (const ChartMark& mark : chart->marks) {
    if (mark.kind == Finding::Kind::note) continue;
    const QColor ink = colours.of_finding(mark.kind);
    const QRectF top(map.x(mark.from_s), map.rect.top(), std::max(2.0, map.x(mark.to_s) - map.x(mark.from_s)),
                     3.0);
    painter->fillRect(top, ink);
    for (const double x : {top.left(), top.right() - 1.0})
      painter->fillRect(QRectF(x, top.top(), 1.0, 8.0), ink);
  }
  if (scene().verdicts) {
    for (const StageCourse& stage : scene().verdicts->stages) {
      const auto range = std::find_if(ranges.begin(), ranges.end(), [&stage](const ChartRange& one) {
        return one.stage == stage.number && one.weld == stage.weld;
      });
      if (range != ranges.end()) draw_reached(painter, map, stage, range->low_c, colours);
    }
  }
  // What people noted and where spares took over: a line from the top, its words in the layer of words.
  for (const auto* notes : {&chart->remarks, &chart->takeovers, &chart->deviations}) {
    for (const ChartNote& note : *notes) {
      if (note.at_s < map.from_s || note.at_s > map.to_s) continue;
      painter->setPen(QPen(colours.note, 1.0, Qt::DotLine));
      painter->drawLine(QPointF(map.x(note.at_s), map.rect.top()),
                        QPointF(map.x(note.at_s), map.rect.bottom()));
    }
  }
}

}  // namespace soakwright::gui
