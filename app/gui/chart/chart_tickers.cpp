#include "app/gui/chart/chart_tickers.h"

#include <array>
#include <cmath>

#include "app/gui/reading_text.h"

namespace soakwright::gui {
namespace {

constexpr double kDay = 86'400.0;
constexpr std::array<double, 21> kSteps = {1,      2,      5,      10,   15,       30,       60,
                                           120,    300,    600,    900,  1800,     3600,     7200,
                                           10'800, 21'600, 43'200, kDay, 2 * kDay, 7 * kDay, 14 * kDay};

}  // namespace

double ClockTicker::secondOfDay() const {
  if (!record_ || !record_->start) return 0.0;
  const auto midnight = LocalTime::of(record_->start->date(), 0, 0, 0);
  return midnight ? record_->start->seconds_since(*midnight) : 0.0;
}

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

QVector<double> ClockTicker::createTickVector(double step, const QCPRange& range) {
  setTickOrigin(-secondOfDay());
  return QCPAxisTicker::createTickVector(step, range);
}

QVector<QString> ClockTicker::createLabelVector(const QVector<double>& ticks, const QLocale& /*locale*/,
                                                QChar /*format*/, int /*precision*/) {
  QVector<QString> labels;
  const bool clock = record_ && record_->start;
  CivilDate said;
  bool any_said = false;
  for (const double tick : ticks) {
    if (!clock) {
      const QString text = elapsed_text(tick);
      labels.append(step_s_ < 60.0 ? text : text.left(text.size() - 3));
      continue;
    }
    const LocalTime local = record_->start->plus_seconds(tick);
    const QString time = QString::fromStdString(local.iso()).section(u'T', 1);
    QString label = step_s_ < 60.0 ? time : time.left(5);
    const CivilDate date = local.date();
    if (date.year > 1970 && (!any_said || date != said)) {
      label += QLatin1Char('\n') + day_text(date);
      if (!any_said) label += QLatin1Char(' ') + QString::number(date.year);
      said = date;
      any_said = true;
    }
    labels.append(label);
  }
  return labels;
}

double TemperatureTicker::getTickStep(const QCPRange& range) {
  const double per_kelvin = TemperatureDifference::of_kelvin(1.0).in(unit_);
  return QCPAxisTicker::getTickStep(QCPRange(0.0, range.size() * per_kelvin)) / per_kelvin;
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
