// SPDX-License-Identifier: GPL-3.0-or-later
// Temperatures, their differences and their rates, as three types that do not mix.
//
// Inside the program a temperature is in degrees Celsius, a difference in kelvin and a rate in degrees
// Celsius per hour. Fahrenheit and kelvin exist at the edges only: a point converts with the offset, a
// difference or a rate without it. Conversions of decimals with at most six places are exact to the
// nearest double, so that 1100 F and 593.33... C meet where they should.
#pragma once

#include <compare>
#include <optional>

namespace soakwright {

/// The unit that a file is written in.
enum class TemperatureUnit { celsius, fahrenheit, kelvin };

/// A difference between two temperatures, in kelvin.
class TemperatureDifference {
 public:
  constexpr TemperatureDifference() = default;
  static constexpr TemperatureDifference of_kelvin(double kelvin) { return TemperatureDifference{kelvin}; }
  /// 9 F of difference are 5 K; there is no offset.
  static TemperatureDifference of(double value, TemperatureUnit unit);
  [[nodiscard]] constexpr double kelvin() const { return kelvin_; }
  [[nodiscard]] double in(TemperatureUnit unit) const;
  constexpr auto operator<=>(const TemperatureDifference&) const = default;

 private:
  constexpr explicit TemperatureDifference(double kelvin) : kelvin_(kelvin) {}
  double kelvin_ = 0.0;
};

/// A point on the temperature scale.
class Temperature {
 public:
  constexpr Temperature() = default;
  static constexpr Temperature of_celsius(double celsius) { return Temperature{celsius}; }
  static Temperature of(double value, TemperatureUnit unit);
  [[nodiscard]] constexpr double celsius() const { return celsius_; }
  [[nodiscard]] double in(TemperatureUnit unit) const;
  constexpr auto operator<=>(const Temperature&) const = default;  // NOLINT(modernize-use-nullptr)

 private:
  constexpr explicit Temperature(double celsius) : celsius_(celsius) {}
  double celsius_ = 0.0;
};

constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
  return TemperatureDifference::of_kelvin(a.celsius() - b.celsius());
}
constexpr Temperature operator+(Temperature point, TemperatureDifference step) {
  return Temperature::of_celsius(point.celsius() + step.kelvin());
}
constexpr Temperature operator-(Temperature point, TemperatureDifference step) {
  return Temperature::of_celsius(point.celsius() - step.kelvin());
}

/// How fast a temperature changes, in degrees Celsius per hour. A limit is positive both ways.
class HeatingRate {
 public:
  constexpr HeatingRate() = default;
  static constexpr HeatingRate of_celsius_per_hour(double rate) { return HeatingRate{rate}; }
  static HeatingRate of(double value_per_hour, TemperatureUnit unit);
  [[nodiscard]] constexpr double celsius_per_hour() const { return rate_; }
  [[nodiscard]] double in(TemperatureUnit unit) const;
  constexpr auto operator<=>(const HeatingRate&) const = default;

 private:
  constexpr explicit HeatingRate(double rate) : rate_(rate) {}
  double rate_ = 0.0;
};

inline std::optional<double> celsius_if_any(const std::optional<Temperature>& temperature) {
  return temperature ? std::optional{temperature->celsius()} : std::nullopt;
}

}  // namespace soakwright
