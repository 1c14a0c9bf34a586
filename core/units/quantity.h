// SPDX-License-Identifier: GPL-3.0-or-later
// The six kinds of quantity that a limit, a reading or a sentence can have, as types that do not mix.
//
// A point on the temperature scale and a difference between two points are two kinds: only the point has an
// offset when it is printed in Fahrenheit. Values inside: °C, °C, °C/h, s, plain numbers.
#pragma once

#include <cstdint>
#include <variant>

#include "core/units/temperature.h"

namespace soakwright {

/// A length of time, in seconds; may be negative (a margin).
class Duration {
 public:
  constexpr Duration() = default;
  static constexpr Duration of_seconds(double seconds) { return Duration{seconds}; }
  [[nodiscard]] constexpr double seconds() const { return seconds_; }
  constexpr auto operator<=>(const Duration&) const = default;

 private:
  constexpr explicit Duration(double seconds) : seconds_(seconds) {}
  double seconds_ = 0.0;
};

/// A plain number: a share, or a parameter without a unit.
class Ratio {
 public:
  constexpr Ratio() = default;
  static constexpr Ratio of(double value) { return Ratio{value}; }
  [[nodiscard]] constexpr double value() const { return value_; }
  constexpr auto operator<=>(const Ratio&) const = default;

 private:
  constexpr explicit Ratio(double value) : value_(value) {}
  double value_ = 0.0;
};

/// How many; may be negative (a margin).
class Count {
 public:
  constexpr Count() = default;
  static constexpr Count of(std::int64_t value) { return Count{value}; }
  [[nodiscard]] constexpr std::int64_t value() const { return value_; }
  constexpr auto operator<=>(const Count&) const = default;

 private:
  constexpr explicit Count(std::int64_t value) : value_(value) {}
  std::int64_t value_ = 0;
};

/// In the order of the alternatives of Quantity.
enum class QuantityKind { temperature, difference, rate, duration, ratio, count };

using Quantity = std::variant<Temperature, TemperatureDifference, HeatingRate, Duration, Ratio, Count>;

constexpr QuantityKind kind_of(const Quantity& quantity) {
  return static_cast<QuantityKind>(quantity.index());
}

/// `value` in the core's unit of that kind: °C, °C, °C/h, s, 1; a count is rounded to a whole number.
Quantity quantity_of(QuantityKind kind, double value);

/// The kind of what lies between two quantities of `kind`: two points differ by a difference.
constexpr QuantityKind difference_kind(QuantityKind kind) {
  return kind == QuantityKind::temperature ? QuantityKind::difference : kind;
}

}  // namespace soakwright
