// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/reading_text.h"

#include <array>

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

QString day_text(const CivilDate& date) {
  static constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return QStringLiteral("%1 %2").arg(date.day).arg(
      QLatin1String(kMonths[static_cast<std::size_t>(date.month - 1)]));
}

QString moment_text(const Record& record, double at_s) {
  constexpr int kAsNeeded = RecorderClock::kAsNeeded;
  const auto local = record.local_time(at_s);
  if (!local) return QString::fromStdString(record.moment_text(at_s, kAsNeeded));
  const CivilDate date = local->date();
  return QStringLiteral("%1 %2 %3")
      .arg(day_text(date))
      .arg(date.year)
      .arg(QString::fromStdString(record.clock.parts(at_s, kAsNeeded).time));
}

}  // namespace soakwright::gui
