// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_axes.h"

#include <QFontMetricsF>
#include <QPainter>
#include <array>
#include <cmath>

namespace soakwright::pdf {
namespace {

constexpr double kDay_s = 86'400.0;
constexpr std::array<double, 22> kTimeSteps_s = {
    1,     2,     5,     10,     15,     30,     60,     120,    300,        600,        900,
    1'800, 3'600, 7'200, 10'800, 14'400, 21'600, 43'200, kDay_s, 2 * kDay_s, 7 * kDay_s, 28 * kDay_s};

double temperature_step(double span, int most) {
  const double rough = span / most;
  const double decade = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0, 10.0})
    if (factor * decade >= rough) return factor * decade;
  return 10.0 * decade;
}

}  // namespace

std::vector<Tick> time_ticks(const Chart& chart, double from_s, double to_s, int most) {
  double step = kTimeSteps_s.back();
  for (const double candidate : kTimeSteps_s)
    if ((to_s - from_s) / candidate <= most) {
      step = candidate;
      break;
    }
  const RecorderClock& clock = chart.record->clock;
  std::vector<Tick> ticks;
  std::string last_day;
  for (const double at : clock.round_moments(from_s, to_s, step)) {
    const RecorderClock::Parts shown = clock.parts(at);
    Tick tick{at, text(shown.time), {}};
    if (step >= 60.0) tick.label.chop(3);
    if (shown.day != last_day) tick.date = text(shown.day);
    last_day = shown.day;
    ticks.push_back(std::move(tick));
  }
  return ticks;
}

std::vector<Tick> temperature_ticks(const Chart& chart, double low_c, double high_c, int most) {
  const double low = Temperature::of_celsius(low_c).in(chart.unit);
  const double high = Temperature::of_celsius(high_c).in(chart.unit);
  const double step = temperature_step(high - low, std::max(most, 2));
  const int digits = step < 1.0 ? static_cast<int>(std::ceil(-std::log10(step) - 1e-9)) : 0;
  std::vector<Tick> ticks;
  for (double n = std::ceil(low / step - 1e-9); n * step <= high; n += 1.0) {
    QString label = QString::number(n * step, 'f', digits);
    if (label.startsWith(QLatin1Char('-'))) label.replace(0, 1, QStringLiteral("−"));
    ticks.push_back({Temperature::of(n * step, chart.unit).celsius(), label, {}});
  }
  return ticks;
}

double axis_height(const Chart& chart, const Scale& scale, double points) {
  return scale.mm(1.2) + (chart.has_days ? 3.3 : 2.3) * QFontMetricsF(scale.font(points)).height();
}

void paint_grid(QPainter& painter, const ChartMap& map, const Scale& scale, const std::vector<Tick>& times,
                const std::vector<Tick>& temperatures, double labels_y) {
  painter.setPen(QPen(colour::kGrid, scale.mm(0.12)));
  for (const Tick& tick : times)
    painter.drawLine(QPointF(map.x(tick.at), map.plot().top()), QPointF(map.x(tick.at), labels_y));
  for (const Tick& tick : temperatures)
    painter.drawLine(QPointF(map.plot().left(), map.y(tick.at)), QPointF(map.plot().right(), map.y(tick.at)));
}

void paint_axis_labels(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                       const std::vector<Tick>& times, const std::vector<Tick>& temperatures, double labels_y,
                       double points) {
  const QFont font = scale.font(points);
  const QFontMetricsF metrics(font);
  const double line = metrics.height();
  const double tick_length = scale.mm(1.0);
  const QRectF& plot = map.plot();
  painter.setFont(font);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colour::kInk, scale.mm(0.2)));
  painter.drawRect(plot);
  const auto write = [&](double x, double y, const QString& words) {
    const double width = metrics.horizontalAdvance(words);
    // Kept within the sheet at both ends of the axis.
    painter.drawText(QRectF(x - 0.5 * width, y, width, line), Qt::AlignCenter | Qt::TextDontClip, words);
  };
  double dated_to = plot.left() - scale.mm(20.0);
  for (const Tick& tick : times) {
    const double x = map.x(tick.at);
    painter.drawLine(QPointF(x, labels_y), QPointF(x, labels_y + tick_length));
    write(x, labels_y + 1.2 * tick_length, tick.label);
    const double half = 0.5 * metrics.horizontalAdvance(tick.date);
    if (tick.date.isEmpty() || x - half < dated_to) continue;
    write(x, labels_y + 1.2 * tick_length + line, tick.date);
    dated_to = x + half + scale.mm(1.0);
  }
  for (const Tick& tick : temperatures) {
    const double y = map.y(tick.at);
    painter.drawLine(QPointF(plot.left() - tick_length, y), QPointF(plot.left(), y));
    const QRectF box(plot.left() - scale.mm(30.0), y - 0.5 * line, scale.mm(30.0) - 1.6 * tick_length, line);
    painter.drawText(box, Qt::AlignRight | Qt::AlignVCenter, tick.label);
  }
  const double below = labels_y + 1.2 * tick_length + (chart.has_days ? 2.0 : 1.0) * line;
  painter.drawText(QRectF(plot.left(), below, plot.width(), 1.2 * line), Qt::AlignHCenter | Qt::AlignTop,
                   text(chart.time_axis));
  if (metrics.horizontalAdvance(text(chart.temperature_axis)) > plot.height()) return;
  painter.save();
  double widest = 0.0;
  for (const Tick& tick : temperatures) widest = std::max(widest, metrics.horizontalAdvance(tick.label));
  painter.translate(plot.left() - 2.2 * tick_length - widest - line, plot.center().y());
  painter.rotate(-90.0);
  painter.drawText(QRectF(-0.5 * plot.height(), -0.2 * line, plot.height(), line), Qt::AlignCenter,
                   text(chart.temperature_axis));
  painter.restore();
}

}  // namespace soakwright::pdf
