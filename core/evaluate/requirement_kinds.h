// SPDX-License-Identifier: GPL-3.0-or-later
// The kinds of requirement, and what is fixed for each: this table is the only place that says it.
#pragma once

#include <string_view>

#include "core/units/quantity.h"

namespace soakwright {

enum class RequirementKind {
  temperature_max,
  start,
  end,
  gap,
  interval,
  thermocouples,
  calibration,
  heating_rate,
  heating_rate_min,
  cooling_rate,
  cooling_rate_min,
  spread,
  hold_time,
  hold_time_max,
  excursion_time,
  over,
  edge,
  tempering_min,
  tempering_max,
  maintain,
};
inline constexpr std::size_t kRequirementKinds = static_cast<std::size_t>(RequirementKind::maintain) + 1;

/// Which way a limit counts.
enum class LimitSense { at_most, at_least };

/// What the chart can show of the measured value.
enum class EvidenceShape {
  points,       ///< the readings at its moment, or at both ends of its time
  rising_fit,   ///< the fitted line of a window
  falling_fit,  ///< the same; the measured value is the fall
  hold_clock,   ///< where thermocouples started and stopped the clock
};

struct RequirementFacts {
  std::string_view id;                          ///< behind the point of the result's id: "heating-rate"
  QuantityKind quantity = QuantityKind::ratio;  ///< of limit and measured value
  LimitSense sense = LimitSense::at_most;
  EvidenceShape evidence = EvidenceShape::points;
  bool is_rate = false;  ///< has overall rates, and may have other windows, beside the measured value
};

/// No default: the compiler names the kind that has no line here.
constexpr RequirementFacts facts_of(RequirementKind kind) {
  using Sense = LimitSense;
  using Shape = EvidenceShape;
  using Kind = QuantityKind;
  switch (kind) {
    case RequirementKind::temperature_max:
      return {"temperature-max", Kind::temperature, Sense::at_most, Shape::points};
    case RequirementKind::start:
      return {"start-temperature", Kind::temperature, Sense::at_most, Shape::points};
    case RequirementKind::end:
      return {"end-temperature", Kind::temperature, Sense::at_most, Shape::points};
    case RequirementKind::gap:
      return {"gap", Kind::duration, Sense::at_most, Shape::points};
    case RequirementKind::interval:
      return {"sampling-interval", Kind::duration, Sense::at_most, Shape::points};
    case RequirementKind::thermocouples:
      return {"thermocouples", Kind::count, Sense::at_least, Shape::points};
    case RequirementKind::calibration:
      return {"calibration", Kind::count, Sense::at_most, Shape::points};
    case RequirementKind::heating_rate:
      return {"heating-rate", Kind::rate, Sense::at_most, Shape::rising_fit, true};
    case RequirementKind::heating_rate_min:
      return {"heating-rate-min", Kind::rate, Sense::at_least, Shape::points, true};
    case RequirementKind::cooling_rate:
      return {"cooling-rate", Kind::rate, Sense::at_most, Shape::falling_fit, true};
    case RequirementKind::cooling_rate_min:
      return {"cooling-rate-min", Kind::rate, Sense::at_least, Shape::points, true};
    case RequirementKind::spread:
      return {"spread", Kind::difference, Sense::at_most, Shape::points};
    case RequirementKind::hold_time:
      return {"hold-time", Kind::duration, Sense::at_least, Shape::hold_clock};
    case RequirementKind::hold_time_max:
      return {"hold-time-max", Kind::duration, Sense::at_most, Shape::points};
    case RequirementKind::excursion_time:
      return {"excursion-time", Kind::duration, Sense::at_most, Shape::points};
    case RequirementKind::over:
      return {"over-temperature", Kind::temperature, Sense::at_most, Shape::points};
    case RequirementKind::edge:
      return {"edge-temperature", Kind::ratio, Sense::at_least, Shape::points};
    case RequirementKind::tempering_min:
      return {"tempering-min", Kind::ratio, Sense::at_least, Shape::points};
    case RequirementKind::tempering_max:
      return {"tempering-max", Kind::ratio, Sense::at_most, Shape::points};
    case RequirementKind::maintain:
      return {"maintain", Kind::duration, Sense::at_most, Shape::points};
  }
  return {};
}

constexpr bool every_kind_has_an_id() {
  for (std::size_t kind = 0; kind < kRequirementKinds; ++kind)
    if (facts_of(static_cast<RequirementKind>(kind)).id.empty()) return false;
  return true;
}
static_assert(every_kind_has_an_id());

}  // namespace soakwright
