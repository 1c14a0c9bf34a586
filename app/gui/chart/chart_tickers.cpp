// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/chart_tickers.h"

#include <array>
#include <cmath>

#include "app/gui/texts/reading_text.h"

namespace soakwright::gui {
namespace {

constexpr double kDay = 86'400.0;
constexpr std::array<double, 21> kSteps = {1,      2,      5,      10,   15,       30,       60,
                                           120,    300,    600,    900,  1800,     3600,     7200,
                                           10'800, 21'600, 43'200, kDay, 2 * kDay, 7 * kDay, 14 * kDay};

}  // namespace

double ClockTicker::getTickStep(const QCPRange& range) {
  const double wanted = range.size() / (tickCount() + 1e-10);
  step_s_ = kSteps.back();
  for (const double step : kSteps) {
    if (step < wanted) continue;
    step_s_ = step;
    break;
  }
  if (range.size() < 5.0) step_s_ = cleanMantissa(wanted);
  return step_s_;
}

int ClockTicker::getSubTickCount(double step) {
  if (step == 10'800.0 || step == 900.0 || step == 15.0) return 2;
  if (step == 7200.0 || step == 120.0 || step == 2.0 || step == 1800.0 || step == 21'600.0 || step == 30.0)
    return 1;
  return step >= kDay || step == 3600.0 || step == 60.0 || step == 43'200.0 ? 3 : 4;
}

const RecorderClock& ClockTicker::clock() const {
  static const RecorderClock kElapsed;
  return record_ && !origin_s_ ? record_->clock : kElapsed;
}

QVector<double> ClockTicker::createTickVector(double step, const QCPRange& range) {
  const double origin_s = origin_s_.value_or(0.0);
  // One beyond each end, for the small ticks there.
  QVector<double> ticks;
  for (const double moment :
       clock().round_moments(range.lower - origin_s - step, range.upper - origin_s + step, step))
    ticks.append(origin_s + moment);
  return ticks;
}

QVector<QString> ClockTicker::createLabelVector(const QVector<double>& ticks, const QLocale& /*locale*/,
                                                QChar /*format*/, int /*precision*/) {
  QVector<QString> labels;
  const double origin_s = origin_s_.value_or(0.0);
  std::string said;
  bool any_dated = false;
  for (const double tick : ticks) {
    // Ticks are at round moments, but for the last bit: to the second, or as fine as the axis is.
    const RecorderClock::Parts shown =
        clock().parts(tick - origin_s, step_s_ < 1.0 ? RecorderClock::kAsNeeded : 0);
    const QString time = QString::fromStdString(shown.time);
    QString label = step_s_ < 60.0 ? time : time.left(time.size() - 3);
    if (shown.day != said) {
      said = shown.day;
      const auto local = clock().local_time(tick - origin_s);
      label += QLatin1Char('\n') + (local ? day_text(local->date()) : QString::fromStdString(said));
      if (local && !any_dated) label += QLatin1Char(' ') + QString::number(local->date().year);
      any_dated = local.has_value();
    }
    labels.append(label);
  }
  return labels;
}

double TemperatureTicker::getTickStep(const QCPRange& range) {
  const double per_kelvin = TemperatureDifference::of_kelvin(1.0).in(unit_);
  return QCPAxisTicker::getTickStep(QCPRange(0.0, range.size() * per_kelvin)) / per_kelvin;
}

double RateTicker::getTickStep(const QCPRange& range) {
  const double per_kelvin = TemperatureDifference::of_kelvin(1.0).in(unit_);
  return QCPAxisTicker::getTickStep(QCPRange(0.0, range.size() * per_kelvin)) / per_kelvin;
}

QString RateTicker::getTickLabel(double tick, const QLocale& /*locale*/, QChar /*format*/,
                                 int /*precision*/) {
  const double value = TemperatureDifference::of_kelvin(tick).in(unit_);
  const double tenth = std::round(value * 10.0) / 10.0;
  const QString text =
      tenth == std::round(tenth) ? QString::number(static_cast<int>(tenth)) : QString::number(tenth, 'f', 1);
  return QString(text).replace(u'-', QChar(0x2212));
}

QVector<double> TemperatureTicker::createTickVector(double step, const QCPRange& range) {
  setTickOrigin(Temperature::of(0.0, unit_).celsius());
  return QCPAxisTicker::createTickVector(step, range);
}

QString TemperatureTicker::getTickLabel(double tick, const QLocale& /*locale*/, QChar /*format*/,
                                        int /*precision*/) {
  const double value = Temperature::of_celsius(tick).in(unit_);
  // Round values of the unit, but for the last bit of the way there and back.
  const double tenth = std::round(value * 10.0) / 10.0;
  return tenth == std::round(tenth) ? QString::number(static_cast<int>(tenth))
                                    : QString::number(tenth, 'f', 1);
}

}  // namespace soakwright::gui
