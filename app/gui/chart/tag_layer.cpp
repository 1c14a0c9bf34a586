// SPDX-License-Identifier: GPL-3.0-or-later
// The name of each trace at the right end of the view, each in a place of its own; and marks along the
// traces, so that they part without colour.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/tag_places.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kMarkStep = 190.0;  ///< pixels between two marks of one trace

/// The reading nearest to a moment.
std::optional<std::pair<double, double>> reading_near(const Chart& chart, std::size_t trace, double at_s) {
  const std::vector<double>& times = chart.record->times_s;
  if (times.empty()) return std::nullopt;
  const auto at = std::lower_bound(times.begin(), times.end(), at_s) - times.begin();
  const auto row = static_cast<std::size_t>(
      std::clamp<std::ptrdiff_t>(at, 0, static_cast<std::ptrdiff_t>(times.size()) - 1));
  const auto celsius = chart.traces[trace].readings.celsius(row);
  if (!celsius) return std::nullopt;
  return std::pair{times[row], *celsius};
}

}  // namespace

int tag_width(const Chart& chart, const QFontMetrics& metrics) {
  constexpr int kWidest = 96;
  int width = 0;
  for (const ChartTrace& trace : chart.traces)
    width = std::max(width, metrics.horizontalAdvance(pdf::shown_text(trace.name)));
  return std::min(width, kWidest) + 26;
}

void TagLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  if (!chart || !axisRect()) return;
  const PixelMap map(*axisRect());
  if (map.rect.width() <= 0 || map.rect.height() <= 0) return;  // not shown yet
  const QFontMetricsF metrics(painter->font());
  struct End {
    std::size_t trace;
    QPointF at;
  };
  std::vector<End> ends;
  const double last_s =
      std::min(map.to_s, chart->record->times_s.empty() ? map.to_s : chart->record->times_s.back());
  for (std::size_t i = 0; i < chart->traces.size(); ++i) {
    if (!scene().shows(i)) continue;
    const auto reading = reading_near(*chart, i, last_s);
    if (!reading) continue;
    const QPointF at(map.x(reading->first), map.y(reading->second));
    if (at.y() < map.rect.top() - 1 || at.y() > map.rect.bottom() + 1) continue;
    ends.push_back({i, at});
  }
  const double spacing = metrics.height() * 0.92;
  const auto room = static_cast<std::size_t>(std::max(1.0, map.rect.height() / spacing));
  std::size_t left_out = 0;
  if (ends.size() > room) {
    // Those that the eye follows first, the others in the list's order.
    std::stable_sort(ends.begin(), ends.end(), [this](const End& a, const End& b) {
      return scene().followed(a.trace) && !scene().followed(b.trace);
    });
    left_out = ends.size() - (room - 1);
    ends.resize(room - 1);
  }
  std::stable_sort(ends.begin(), ends.end(), [](const End& a, const End& b) { return a.at.y() < b.at.y(); });
  std::vector<double> wanted;
  wanted.reserve(ends.size());
  for (const End& end : ends) wanted.push_back(end.at.y());
  const double bottom = map.rect.bottom() - (left_out > 0 ? spacing : 0.0);
  const std::vector<double> places = places_apart(std::move(wanted), spacing, map.rect.top(), bottom);
  const QRect outer = axisRect()->outerRect();
  const double text_left = map.rect.right() + 20.0;
  const double text_width = outer.right() - text_left - 2.0;
  const auto write = [&](double middle, const QString& text, const QColor& ink) {
    painter->setPen(ink);
    painter->drawText(QRectF(text_left, middle - 0.5 * metrics.height(), text_width, metrics.height()),
                      Qt::AlignVCenter | Qt::AlignLeft,
                      metrics.elidedText(text, Qt::ElideMiddle, text_width));
  };
  for (std::size_t i = 0; i < ends.size(); ++i) {
    QPen pen = scene().pens[ends[i].trace];
    if (!scene().followed(ends[i].trace))
      pen.setColor(mixed(pen.color(), scene().colours.background, kFadedShare));
    painter->setPen(QPen(pen.color(), 0.8));
    painter->drawLine(
        QPointF(std::min(ends[i].at.x(), static_cast<double>(map.rect.right())), ends[i].at.y()),
        QPointF(text_left - 10.0, places[i]));
    marks_.draw(painter, QPointF(text_left - 6.0, places[i]), ends[i].trace, pen.color(),
                scene().colours.background);
    write(places[i], pdf::shown_text(chart->traces[ends[i].trace].name), pen.color());
  }
  if (left_out > 0)
    write(map.rect.bottom() - 0.5 * spacing, tr("+%1").arg(left_out), scene().colours.faint_ink);

  painter->setClipRect(map.rect);
  const double step_s = kMarkStep / map.pixels_per_s;
  for (std::size_t i = 0; i < chart->traces.size(); ++i) {
    if (!scene().shows(i) || !scene().followed(i)) continue;
    // Marks of different traces stand at different places.
    const double share =
        static_cast<double>(i % TraceMarks::kShapes) / TraceMarks::kShapes + 0.5 / TraceMarks::kShapes;
    const double first = std::floor(map.from_s / step_s) + share;
    const auto count = static_cast<int>(std::ceil(map.to_s / step_s - first));
    for (int mark = 0; mark < count; ++mark) {
      const double at_s = (first + mark) * step_s;
      const auto reading = at_s < map.from_s ? std::nullopt : reading_near(*chart, i, at_s);
      if (reading)
        marks_.draw(painter, QPointF(map.x(reading->first), map.y(reading->second)), i,
                    scene().pens[i].color(), scene().colours.background);
    }
  }
  painter->setClipping(false);
}

QRect TagLayer::clipRect() const {
  // The names stand in the margin to the right.
  return axisRect() ? axisRect()->outerRect() : QRect();
}

}  // namespace soakwright::gui
