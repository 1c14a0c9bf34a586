// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/temperature.h"

#include <cmath>
#include <cstdint>

namespace soakwright {
namespace {

constexpr double kMillionths = 1e6;

/// `value` in millionths where it is a decimal with at most six places.
bool in_millionths(double value, std::int64_t& millionths) {
  if (!(std::fabs(value) < 1e9)) return false;
  const double scaled = std::nearbyint(value * kMillionths);
  millionths = static_cast<std::int64_t>(scaled);
  return scaled / kMillionths == value;
}

}  // namespace

TemperatureDifference TemperatureDifference::of(double value, TemperatureUnit unit) {
  return of_kelvin(unit == TemperatureUnit::fahrenheit ? value * 5.0 / 9.0 : value);
}

double TemperatureDifference::in(TemperatureUnit unit) const {
  return unit == TemperatureUnit::fahrenheit ? kelvin_ * 9.0 / 5.0 : kelvin_;
}

Temperature Temperature::of(double value, TemperatureUnit unit) {
  std::int64_t millionths = 0;
  const bool exact = in_millionths(value, millionths);
  switch (unit) {
    case TemperatureUnit::celsius:
      return of_celsius(value);
    case TemperatureUnit::fahrenheit:
      if (exact) return of_celsius(static_cast<double>((millionths - 32'000'000) * 5) / (9.0 * kMillionths));
      return of_celsius((value - 32.0) * 5.0 / 9.0);
    case TemperatureUnit::kelvin:
      if (exact) return of_celsius(static_cast<double>(millionths - 273'150'000) / kMillionths);
      return of_celsius(value - 273.15);
  }
  return of_celsius(value);
}

double Temperature::in(TemperatureUnit unit) const {
  switch (unit) {
    case TemperatureUnit::celsius:
      return celsius_;
    case TemperatureUnit::fahrenheit:
      return celsius_ * 9.0 / 5.0 + 32.0;
    case TemperatureUnit::kelvin:
      return celsius_ + 273.15;
  }
  return celsius_;
}

HeatingRate HeatingRate::of(double value_per_hour, TemperatureUnit unit) {
  return of_celsius_per_hour(TemperatureDifference::of(value_per_hour, unit).kelvin());
}

double HeatingRate::in(TemperatureUnit unit) const {
  return TemperatureDifference::of_kelvin(rate_).in(unit);
}

}  // namespace soakwright
