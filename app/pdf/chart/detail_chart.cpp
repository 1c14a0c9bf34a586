// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/detail_chart.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

#include "app/pdf/chart/chart_axes.h"
#include "app/pdf/chart/chart_backdrop.h"
#include "app/pdf/chart/chart_traces.h"

namespace soakwright::pdf {
namespace {

constexpr double kDetailLeft_mm = 13.0;

/// The frame of a detail: its map, ticks and grid, with the traces wanted drawn in it.
class Detail {
 public:
  Detail(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
         const ChartWindow& window)
      : painter_(painter),
        scale_(scale),
        chart_(chart),
        map_(area.adjusted(scale.mm(kDetailLeft_mm), scale.mm(1.0), -scale.mm(kNumberColumn_mm),
                           -axis_height(chart, scale, kChartPoints)),
             window),
        times_(time_ticks(chart, window.from_s, window.to_s, most(map_.plot().width(), 15.0))),
        temperatures_(
            temperature_ticks(chart, window.low_c, window.high_c, most(map_.plot().height(), 8.0))) {}

  [[nodiscard]] const ChartMap& map() const { return map_; }
  [[nodiscard]] const QRectF& plot() const { return map_.plot(); }

  void clip() {
    painter_.save();
    painter_.setClipRect(plot());
  }
  void unclip() { painter_.restore(); }
  void paint_back(bool ranges_filled) {
    paint_ranges(painter_, map_, scale_, chart_, ranges_filled);
    paint_grid(painter_, map_, scale_, times_, temperatures_, plot().bottom());
    paint_levels(painter_, map_, scale_, chart_);
  }
  std::vector<DrawnTrace> paint_lines(const std::vector<std::size_t>& which) {
    std::vector<DrawnTrace> traces = draw_ready(chart_, which, map_, scale_);
    paint_traces(painter_, map_, scale_, traces);
    return traces;
  }
  /// `large`: there is room for words on ranges and levels, and for numbers on the traces.
  void paint_front(const std::vector<DrawnTrace>& traces, LabelLayout& places, bool large) {
    if (large) paint_backdrop_words(painter_, map_, scale_, chart_, places, kChartPoints);
    paint_end_numbers(painter_, map_, scale_, chart_, traces, places);
    if (large) paint_numbers_on_traces(painter_, map_, scale_, chart_, traces, places);
    paint_axis_labels(painter_, map_, scale_, chart_, times_, temperatures_, plot().bottom(), kChartPoints);
  }

 private:
  [[nodiscard]] int most(double length, double each_mm) const {
    return std::max(2, static_cast<int>(length / scale_.mm(each_mm)));
  }

  QPainter& painter_;
  const Scale& scale_;
  const Chart& chart_;
  ChartMap map_;
  std::vector<Tick> times_, temperatures_;
};

/// Rings at the readings that count, their words beside them.
void paint_points(QPainter& painter, const Detail& detail, const Scale& scale, const Evidence& evidence,
                  LabelLayout& places) {
  const double ring = scale.mm(0.9);
  const QRectF seen = detail.plot().adjusted(-1, -1, 1, 1);
  painter.setPen(QPen(colour::kInk, scale.mm(0.3)));
  painter.setBrush(colour::kPdf);
  for (const ChartPoint& point : evidence.points) {
    const QPointF at = detail.map().at(point.at_s, point.level_c);
    if (!seen.contains(at)) continue;
    painter.drawEllipse(at, ring, ring);
    places.occupy(QRectF(at.x() - ring, at.y() - ring, 2.0 * ring, 2.0 * ring));
  }
  painter.setBrush(Qt::NoBrush);
  const QFont font = scale.font(kChartPoints);
  const QFontMetricsF metrics(font);
  painter.setFont(font);
  for (const ChartPoint& point : evidence.points) {
    const QPointF at = detail.map().at(point.at_s, point.level_c);
    const QString words = text(point.text);
    if (!seen.contains(at) || words.isEmpty()) continue;
    const QRectF box(0, 0, metrics.horizontalAdvance(words) + scale.mm(1.0), metrics.height());
    const double right = at.x() + 1.5 * ring;
    const double left = at.x() - 1.5 * ring - box.width();
    const double above = at.y() - box.height() - 0.4 * ring;
    const double below = at.y() + 0.4 * ring;
    paint_words(painter,
                places.place({box.translated(right, above), box.translated(right, below),
                              box.translated(left, above), box.translated(left, below)}),
                words, colour::kInk);
  }
}

}  // namespace

void paint_evidence(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                    const Evidence& evidence) {
  Detail detail(painter, area, scale, chart, window_around(chart, evidence));
  const ChartMap& map = detail.map();
  std::vector<std::size_t> which = evidence.traces;
  if (which.empty())
    for (std::size_t i = 0; i < chart.traces.size(); ++i)
      if (chart.traces[i].role == ChartTrace::Role::evaluated) which.push_back(i);

  detail.clip();
  if (evidence.from_s && evidence.to_s)
    painter.fillRect(QRectF(QPointF(map.x_within(*evidence.from_s), detail.plot().top()),
                            QPointF(map.x_within(*evidence.to_s), detail.plot().bottom())),
                     colour::kEvidence);
  detail.paint_back(false);
  const std::vector<DrawnTrace> traces = detail.paint_lines(which);
  if (evidence.fit) {
    painter.setPen(QPen(colour::kInk, scale.mm(0.55), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(map.at(evidence.fit->first.at_s, evidence.fit->first.level_c),
                     map.at(evidence.fit->second.at_s, evidence.fit->second.level_c));
  }
  detail.unclip();
  LabelLayout places(detail.plot());
  paint_points(painter, detail, scale, evidence, places);
  detail.paint_front(traces, places, false);
}

void paint_hold(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                const ChartRange& range) {
  Detail detail(painter, area, scale, chart, window_of_hold(chart, range));
  std::vector<std::size_t> which;
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (is_of_hold(chart, chart.traces[i], range)) which.push_back(i);
  detail.clip();
  detail.paint_back(true);
  const std::vector<DrawnTrace> traces = detail.paint_lines(which);
  detail.unclip();
  LabelLayout places(detail.plot());
  detail.paint_front(traces, places, true);
}

}  // namespace soakwright::pdf
