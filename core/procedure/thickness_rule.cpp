// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/thickness_rule.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace soakwright {
namespace {

/// Up to a whole step. A thickness that is a whole number of steps but for binary rounding stays where it is.
Thickness rounded_up(Thickness thickness, Thickness step) {
  constexpr double kSlack = 1e-9;
  const double steps = std::ceil(thickness.millimetres() / step.millimetres() - kSlack);
  return Thickness::of(steps * step.millimetres(), LengthUnit::millimetre);
}

template <typename Value, typename Rule>
std::optional<Value> value_at(const std::variant<Value, Rule>& limit, std::optional<Thickness> thickness) {
  if (const auto* plain = std::get_if<Value>(&limit)) return *plain;
  if (!thickness) return std::nullopt;
  return std::get_if<Rule>(&limit)->at(*thickness);
}

}  // namespace

HeatingRate RateRule::at(Thickness thickness) const {
  HeatingRate rate = HeatingRate::of_celsius_per_hour(over.celsius_per_hour() / thickness.in(per));
  if (at_least) rate = std::max(rate, *at_least);
  if (at_most) rate = std::min(rate, *at_most);
  return rate;
}

double TimeRule::at(Thickness thickness) const {
  if (step) thickness = rounded_up(thickness, *step);
  const auto after =
      std::find_if(points.begin(), points.end(), [&](const auto& point) { return thickness <= point.first; });
  if (after == points.begin()) return after->second;
  const auto& before = *std::prev(after);
  const double past = thickness.millimetres() - before.first.millimetres();
  if (after == points.end())
    return before.second + (beyond ? past / beyond->per.millimetres() * beyond->seconds : 0.0);
  const double apart = after->first.millimetres() - before.first.millimetres();
  return before.second + past / apart * (after->second - before.second);
}

std::optional<HeatingRate> limit_at(const RateLimit& limit, std::optional<Thickness> thickness) {
  return value_at(limit, thickness);
}

std::optional<double> limit_at(const TimeLimit& limit, std::optional<Thickness> thickness) {
  return value_at(limit, thickness);
}

}  // namespace soakwright
