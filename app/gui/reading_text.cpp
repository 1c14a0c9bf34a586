#include "app/gui/reading_text.h"

#include <array>
#include <cmath>

namespace soakwright::gui {

QString unit_sign(TemperatureUnit unit) {
  switch (unit) {
    case TemperatureUnit::celsius:
      return QStringLiteral("°C");
    case TemperatureUnit::fahrenheit:
      return QStringLiteral("°F");
    case TemperatureUnit::kelvin:
      break;
  }
  return QStringLiteral("K");
}

QString temperature_text(std::optional<double> celsius, TemperatureUnit unit) {
  if (!celsius) return QStringLiteral("–");
  return QString::number(Temperature::of_celsius(*celsius).in(unit), 'f', 1) + QChar(0x00A0) +
         unit_sign(unit);
}

QString elapsed_text(double seconds) {
  const auto whole = std::llround(std::abs(seconds));
  return QStringLiteral("%1%2:%3:%4")
      .arg(seconds < -0.5 ? QStringLiteral("−") : QString())
      .arg(whole / 3600)
      .arg(whole / 60 % 60, 2, 10, QLatin1Char('0'))
      .arg(whole % 60, 2, 10, QLatin1Char('0'));
}

QString day_text(const CivilDate& date) {
  static constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return QStringLiteral("%1 %2").arg(date.day).arg(
      QLatin1String(kMonths[static_cast<std::size_t>(date.month - 1)]));
}

QString moment_text(const Record& record, double at_s) {
  const auto local = record.local_time(at_s);
  if (!local) return elapsed_text(at_s);
  const CivilDate date = local->date();
  // A log with a time of day alone counts from the clock's own first day: no date to show.
  const QString clock = QString::fromStdString(local->iso()).section(u'T', 1);
  if (date.year <= 1970) return clock;
  return QStringLiteral("%1 %2 %3").arg(day_text(date)).arg(date.year).arg(clock);
}

}  // namespace soakwright::gui
