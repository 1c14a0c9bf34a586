// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_traces.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/pdf/chart/trace_pens.h"

namespace soakwright::pdf {
namespace {

constexpr double kNumberPoints = kChartPoints;
constexpr double kEndSpacing_mm = 3.2;
constexpr double kColumn_mm = 0.25;     // the width of a fine line
constexpr double kTolerance_mm = 0.03;  // no eye sees it

/// The trace's height on the sheet at `x`, where it is drawn there.
std::optional<double> height_at(const DrawnTrace& trace, const ChartMap& map, double x) {
  for (const TracePiece& piece : trace.pieces) {
    if (piece.exclusion || piece.points.size() < 2) continue;
    if (map.x(piece.points.front().at_s) > x || map.x(piece.points.back().at_s) < x) continue;
    const auto after = std::find_if(piece.points.begin() + 1, piece.points.end(),
                                    [&](const TracePoint& point) { return map.x(point.at_s) >= x; });
    if (after == piece.points.end()) continue;
    const TracePoint& a = *(after - 1);
    const TracePoint& b = *after;
    const double share = (x - map.x(a.at_s)) / (map.x(b.at_s) - map.x(a.at_s));
    return map.y(a.celsius + share * (b.celsius - a.celsius));
  }
  return std::nullopt;
}

const TracePoint* last_point(const DrawnTrace& trace) {
  for (auto piece = trace.pieces.rbegin(); piece != trace.pieces.rend(); ++piece)
    if (!piece->points.empty()) return &piece->points.back();
  return nullptr;
}

/// Moves the middles apart until each has `spacing`, within [top, bottom], their order kept.
void spread_out(std::vector<double>& middles, double spacing, double top, double bottom) {
  if (middles.empty()) return;
  const double room = (bottom - top) / static_cast<double>(middles.size());
  spacing = std::min(spacing, room);
  for (std::size_t i = 0; i < middles.size(); ++i) {
    const double least = i == 0 ? top + 0.5 * spacing : middles[i - 1] + spacing;
    middles[i] = std::max(middles[i], least);
  }
  for (std::size_t i = middles.size(); i-- > 0;) {
    const double most = i + 1 == middles.size() ? bottom - 0.5 * spacing : middles[i + 1] - spacing;
    middles[i] = std::min(middles[i], most);
  }
}

}  // namespace

std::vector<DrawnTrace> draw_ready(const Chart& chart, const std::vector<std::size_t>& which,
                                   const ChartMap& map, const Scale& scale) {
  const std::vector<QPen> pens = trace_pens(chart, scale);
  const Thinning thinning{map.window().from_s, map.window().to_s,
                          scale.mm(kColumn_mm) * map.seconds_per_pixel(),
                          scale.mm(kTolerance_mm) * map.kelvin_per_pixel()};
  std::vector<DrawnTrace> traces;
  for (const std::size_t trace : which)
    if (is_drawn(chart.traces[trace]))
      traces.push_back({trace, thinned(chart, trace, thinning), pens[trace]});
  return traces;
}

void paint_traces(QPainter& painter, const ChartMap& map, const Scale& scale,
                  const std::vector<DrawnTrace>& traces) {
  painter.setBrush(Qt::NoBrush);
  QPolygonF line;
  for (const DrawnTrace& trace : traces)
    for (const TracePiece& piece : trace.pieces) {
      line.clear();
      for (const TracePoint& point : piece.points) line.append(map.at(point.at_s, point.celsius));
      painter.setPen(piece.exclusion ? exclusion_pen(scale) : trace.pen);
      if (line.size() == 1) {
        // A reading with no neighbour to be joined to.
        const double r = scale.mm(0.3);
        painter.drawEllipse(line.front(), r, r);
      } else {
        painter.drawPolyline(line);
      }
    }
}

QRectF number_box(const Scale& scale, const QString& number) {
  const QFontMetricsF metrics(scale.font(kNumberPoints));
  const double height = scale.mm(2.9);
  return {0.0, 0.0, std::max(height, metrics.horizontalAdvance(number) + scale.mm(1.0)), height};
}

void paint_number(QPainter& painter, const QRectF& box, const Scale& scale, const QString& number,
                  const QPen& pen, const NumberColours& colours) {
  painter.setFont(scale.font(kNumberPoints));
  painter.setBrush(colours.ground);
  painter.setPen(QPen(pen.color(), scale.mm(0.15)));
  painter.drawRoundedRect(box, scale.mm(0.5), scale.mm(0.5));
  painter.setPen(colours.ink);
  painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, number);
  painter.setBrush(Qt::NoBrush);
}

void paint_end_numbers(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                       const std::vector<DrawnTrace>& traces, LabelLayout& places) {
  struct End {
    const DrawnTrace* trace = nullptr;
    QPointF at;
  };
  std::vector<End> ends;
  const double edge = map.plot().right() - scale.mm(1.5);
  for (const DrawnTrace& trace : traces) {
    const TracePoint* last = last_point(trace);
    if (last == nullptr) continue;
    QPointF at = map.at(last->at_s, last->celsius);
    if (!map.plot().adjusted(-1, -1, 1, 1).contains(at)) continue;  // it leaves this part of the chart
    if (at.x() >= edge) {
      at.setX(map.plot().right());
      ends.push_back({&trace, at});
      continue;
    }
    // It ends within the plot: its number stands there, and no line leads through the plot.
    const QString number = text(chart.traces[trace.trace].tag);
    const QRectF box = number_box(scale, number);
    const double half = 0.5 * box.height();
    const double gap = scale.mm(0.6);
    const auto place = places.place({box.translated(at.x() + gap, at.y() - half),
                                     box.translated(at.x() + gap, at.y() - 2.5 * half),
                                     box.translated(at.x() + gap, at.y() + half),
                                     box.translated(at.x() + gap + box.width(), at.y() - half)});
    if (place) paint_number(painter, *place, scale, number, trace.pen);
  }
  std::stable_sort(ends.begin(), ends.end(), [](const End& a, const End& b) { return a.at.y() < b.at.y(); });
  // Where there is no room for all, evenly chosen ones: each number stands on its trace and in the legend
  // too.
  const auto most = static_cast<std::size_t>(std::max(1.0, map.plot().height() / scale.mm(kEndSpacing_mm)));
  if (ends.size() > most) {
    std::vector<End> chosen;
    for (std::size_t i = 0; i < most; ++i) chosen.push_back(ends[i * ends.size() / most]);
    ends = std::move(chosen);
  }
  std::vector<double> middles;
  middles.reserve(ends.size());
  for (const End& end : ends) middles.push_back(end.at.y());
  spread_out(middles, scale.mm(kEndSpacing_mm), map.plot().top(), map.plot().bottom());
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const QString number = text(chart.traces[ends[i].trace->trace].tag);
    QRectF box = number_box(scale, number);
    box.moveTo(map.plot().right() + scale.mm(3.6), middles[i] - 0.5 * box.height());
    painter.setPen(QPen(ends[i].trace->pen.color(), scale.mm(0.12)));
    painter.drawLine(ends[i].at, QPointF(box.left(), middles[i]));
    paint_number(painter, box, scale, number, ends[i].trace->pen);
  }
}

void paint_numbers_on_traces(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                             const std::vector<DrawnTrace>& traces, LabelLayout& places) {
  constexpr int kPlaces = 40;
  const QRectF& plot = map.plot();
  // Where every trace runs, once, at a fixed number of places along the axis.
  std::vector<std::vector<std::optional<double>>> heights(traces.size());
  for (std::size_t t = 0; t < traces.size(); ++t)
    for (int p = 0; p < kPlaces; ++p)
      heights[t].push_back(height_at(traces[t], map, plot.left() + plot.width() * (p + 0.5) / kPlaces));

  for (std::size_t t = 0; t < traces.size(); ++t) {
    const QString number = text(chart.traces[traces[t].trace].tag);
    const QRectF box = number_box(scale, number);
    // One in either half of the plot.
    for (const int first : {0, kPlaces / 2}) {
      double best = -1.0;
      QRectF best_box;
      for (int p = first; p < first + kPlaces / 2; ++p) {
        const auto& own = heights[t][static_cast<std::size_t>(p)];
        if (!own) continue;
        const double x = plot.left() + plot.width() * (p + 0.5) / kPlaces;
        const QRectF candidate = box.translated(x - 0.5 * box.width(), *own - 0.5 * box.height());
        if (!places.is_free(candidate)) continue;
        double nearest = scale.mm(6.0);
        for (std::size_t other = 0; other < traces.size(); ++other)
          if (const auto& height = heights[other][static_cast<std::size_t>(p)]; other != t && height)
            nearest = std::min(nearest, std::fabs(*height - *own));
        if (nearest <= best) continue;
        best = nearest;
        best_box = candidate;
      }
      if (best < 0.0) continue;
      places.occupy(best_box);
      paint_number(painter, best_box, scale, number, traces[t].pen);
    }
  }
}

}  // namespace soakwright::pdf
