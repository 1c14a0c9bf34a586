// SPDX-License-Identifier: GPL-3.0-or-later
// The rate of a stage that is not taken from a procedure, for tests of its measurement.
#pragma once

#include <optional>

#include "core/measure/rates/rate.h"
#include "tests/core/measure/rates/ramp_between.h"
#include "tests/core/measure/traced.h"

namespace soakwright {

inline RampStage heat(std::optional<double> above = {}, std::optional<double> below = {}) {
  return ramp_between(RampStage::Direction::heat, above, below);
}
inline RampStage cool(std::optional<double> above = {}) {
  return ramp_between(RampStage::Direction::cool, above);
}

inline constexpr double kQuarter_s = 900.0;

/// The rate of a stage that lasts as long as the record, or for `when`, in a record without a hold.
inline StageRate rate_of(const Traced& made, const RampStage& stage, double limit = 1e9,
                         double window_s = kQuarter_s, std::optional<Span> when = {}) {
  StageTime time;
  time.time = when.value_or(made.time());
  return stage_rate(made.record, row_ticks(made.record), made.set, made.group, {}, time,
                    {stage, window_s, 120.0, limit, nullptr});
}

/// The steepest over one of the widths that are told beside the rate.
inline std::optional<double> over_window(const StageRate& rate, std::size_t i) {
  const auto& worst = rate.by_window[i].worst;
  return worst ? std::optional{worst->window.slope_c_per_h} : std::nullopt;
}

/// A row a minute along these corners.
inline Traced minutes(std::size_t rows, const Knots& knots) {
  return Traced(MadeRecord::every(60, rows).course("TC1", knots));
}

}  // namespace soakwright
