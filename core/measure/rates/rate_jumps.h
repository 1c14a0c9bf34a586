// SPDX-License-Identifier: GPL-3.0-or-later
// Rises (falls) between two readings that are too large for the limit, and that no window may show.
#pragma once

#include <cstddef>
#include <vector>

#include "core/measure/rates/rate_parts.h"

namespace soakwright {

struct RateJump {
  std::size_t trace = 0;
  Span time;
  double kelvin = 0.0;  ///< positive in the stage's direction
  bool beside_hold = false;
};

/// Where the channel rises (`sign` 1; −1: falls) by more than `bound_k` between two readings of the part no
/// further apart than `width_s`, or between a reading and an end of the part at which it crosses `above` or
/// `below`. Of jumps that overlap the largest.
std::vector<RateJump> rate_jumps(const Trace& trace, const RatePart& part, const RampStage& stage,
                                 double width_s, double bound_k);

}  // namespace soakwright
