// SPDX-License-Identifier: GPL-3.0-or-later
// The wall or weld thickness that governs a thickness rule.
#pragma once

#include <compare>

namespace soakwright {

enum class LengthUnit { millimetre, inch };

/// A thickness; 1 in is exactly 25.4 mm.
class Thickness {
 public:
  constexpr Thickness() = default;
  static constexpr Thickness of(double value, LengthUnit unit) {
    return Thickness{unit == LengthUnit::inch ? value * 25.4 : value};
  }
  [[nodiscard]] constexpr double millimetres() const { return millimetres_; }
  [[nodiscard]] constexpr double in(LengthUnit unit) const {
    return unit == LengthUnit::inch ? millimetres_ / 25.4 : millimetres_;
  }
  constexpr auto operator<=>(const Thickness&) const = default;  // NOLINT(modernize-use-nullptr)

 private:
  constexpr explicit Thickness(double millimetres) : millimetres_(millimetres) {}
  double millimetres_ = 0.0;
};

}  // namespace soakwright
