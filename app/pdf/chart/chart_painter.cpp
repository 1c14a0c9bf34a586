// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <numeric>

#include "app/pdf/chart/chart_axes.h"
#include "app/pdf/chart/chart_backdrop.h"
#include "app/pdf/chart/chart_lanes.h"
#include "app/pdf/chart/chart_legend.h"
#include "app/pdf/chart/chart_traces.h"
#include "app/pdf/chart/trace_pens.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kLeft_mm = 15.0;

std::vector<std::size_t> all_traces(const Chart& chart) {
  std::vector<std::size_t> all(chart.traces.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

/// A pale broad line under the in_range of a trace in which something was found.
void paint_found_in_range(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart) {
  for (const ChartMark& mark : chart.marks) {
    if (mark.kind == Finding::Kind::note || !mark.trace || mark.to_s <= mark.from_s) continue;
    const Thinning thinning{mark.from_s, mark.to_s, scale.mm(0.3) * map.seconds_per_pixel(), 0.0};
    const bool failed = mark.kind == Finding::Kind::not_met;
    painter.setPen(QPen(failed ? QColor(0xec, 0xb4, 0xae) : QColor(0xea, 0xd2, 0x98), scale.mm(1.1),
                        Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    for (const TracePiece& piece : thinned(chart, *mark.trace, thinning)) {
      QPolygonF line;
      for (const TracePoint& point : piece.points) line.append(map.at(point.at_s, point.celsius));
      painter.drawPolyline(line);
    }
  }
}

void paint_evaluated_limits(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart) {
  const QColor out_of_it(0xf0, 0xf0, 0xf0);
  if (chart.evaluated_from_s > chart.begin_s)
    painter.fillRect(
        QRectF(map.plot().topLeft(), QPointF(map.x_within(chart.evaluated_from_s), map.plot().bottom())),
        out_of_it);
  if (chart.evaluated_to_s < chart.end_s)
    painter.fillRect(
        QRectF(QPointF(map.x_within(chart.evaluated_to_s), map.plot().top()), map.plot().bottomRight()),
        out_of_it);
  painter.setPen(QPen(colour::kFaintInk, scale.mm(0.15)));
  for (const double at_s : {chart.evaluated_from_s, chart.evaluated_to_s})
    if (at_s > chart.begin_s && at_s < chart.end_s)
      painter.drawLine(QPointF(map.x(at_s), map.plot().top()), QPointF(map.x(at_s), map.plot().bottom()));
}

}  // namespace

void paint_chart(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart) {
  const ChartWindow window = whole_window(chart);
  const double lanes = lanes_height(chart, scale);
  QRectF plot = area.adjusted(scale.mm(kLeft_mm), scale.mm(1.0), -scale.mm(kNumberColumn_mm),
                              -lanes - axis_height(chart, scale, kChartPoints));
  plot.setTop(plot.top() + findings_height(chart, ChartMap(plot, window), scale));
  const ChartMap map(plot, window);
  const double labels_y = plot.bottom() + lanes;
  const auto times = time_ticks(chart, window.from_s, window.to_s,
                                std::max(2, static_cast<int>(plot.width() / scale.mm(17.0))));
  const auto temperatures =
      temperature_ticks(chart, window.low_c, window.high_c, static_cast<int>(plot.height() / scale.mm(9.0)));

  paint_evaluated_limits(painter, map, scale, chart);
  paint_ranges(painter, map, scale, chart);
  paint_grid(painter, map, scale, times, temperatures, plot.bottom());
  paint_levels(painter, map, scale, chart);
  paint_findings(painter, map, scale, chart);

  const std::vector<DrawnTrace> traces = draw_ready(chart, all_traces(chart), map, scale);
  painter.save();
  painter.setClipRect(plot);
  paint_found_in_range(painter, map, scale, chart);
  paint_traces(painter, map, scale, traces);
  painter.restore();

  LabelLayout places(plot);
  paint_backdrop_words(painter, map, scale, chart, places, kChartPoints);
  paint_end_numbers(painter, map, scale, chart, traces, places);
  paint_numbers_on_traces(painter, map, scale, chart, traces, places);
  paint_lanes(painter, map, scale, chart, scale.mm(kLeft_mm));
  paint_axis_labels(painter, map, scale, chart, times, temperatures, labels_y, kChartPoints);
}

void paint_chart_with_legend(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                             bool signs) {
  constexpr double kMostLegend = 0.35;  // of the height; more would leave no chart
  const double legend = legend_height(chart, scale, area.width(), signs);
  const double gap = scale.mm(2.0);
  if (legend > kMostLegend * area.height()) {
    const TextBlock words(QStringLiteral("Numbers as in the table of channels."), scale.font(kChartPoints),
                          area.width());
    paint_chart(painter, area.adjusted(0.0, 0.0, 0.0, -words.height() - gap), scale, chart);
    painter.setPen(colour::kInk);
    words.draw(painter, {area.left(), area.bottom() - words.height()});
    return;
  }
  paint_chart(painter, area.adjusted(0.0, 0.0, 0.0, -legend - gap), scale, chart);
  paint_legend(painter, QRectF(area.left(), area.bottom() - legend, area.width(), legend), scale, chart,
               signs);
}

void paint_chart_sheet(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                       const QString& said) {
  const TextBlock title(text(chart.title), scale.font(10.0, true), area.width());
  painter.setPen(colour::kTitle);
  title.draw(painter, area.topLeft());
  const TextBlock below(said, scale.font(kBodyPoints), area.width());
  painter.setPen(colour::kInk);
  below.draw(painter, area.topLeft() + QPointF(0.0, title.height()));
  const double head = title.height() + below.height() + scale.mm(1.5);
  paint_chart_with_legend(painter, area.adjusted(0.0, head, 0.0, 0.0), scale, chart);
}

}  // namespace soakwright::pdf
