// SPDX-License-Identifier: GPL-3.0-or-later
// Limits that depend on the thickness of the weld.
#pragma once

#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

/// `over` divided by the thickness, held within `at_least` and `at_most`.
/// The shape of ASME BPVC VIII-1 UCS-56(d): 400 F/h divided by the thickness in inches, at most 400 F/h, need
/// not be less than 100 F/h.
struct RateRule {
  HeatingRate over;  ///< the rate at one `per`
  LengthUnit per = LengthUnit::millimetre;
  std::optional<HeatingRate> at_least;
  std::optional<HeatingRate> at_most;
  [[nodiscard]] HeatingRate at(Thickness thickness) const;
  bool operator==(const RateRule&) const = default;
};

/// Straight lines between the points, level before the first, the slope `beyond` after the last (level
/// without it); with `step` the thickness is first rounded up to a whole step.
struct TimeRule {
  struct Slope {
    double seconds = 0.0;
    Thickness per;
    bool operator==(const Slope&) const = default;
  };
  std::vector<std::pair<Thickness, double>>
      points;  ///< thickness, seconds; thickness ascending, at least one
  std::optional<Slope> beyond;
  std::optional<Thickness> step;
  [[nodiscard]] double at(Thickness thickness) const;
  bool operator==(const TimeRule&) const = default;
};

using RateLimit = std::variant<HeatingRate, RateRule>;
using TimeLimit = std::variant<double, TimeRule>;  ///< seconds, or the rule

/// The plain limit; nullopt if a rule stands and no thickness is known.
std::optional<HeatingRate> limit_at(const RateLimit& limit, std::optional<Thickness> thickness);
std::optional<double> limit_at(const TimeLimit& limit, std::optional<Thickness> thickness);

}  // namespace soakwright
