// SPDX-License-Identifier: GPL-3.0-or-later
// One heat or cool stage of one weld, as its requirements are evaluated.
#pragma once

#include <vector>

#include "core/evaluate/weld_case.h"
#include "core/measure/holds/stage_time.h"
#include "core/measure/rates/overall_rate.h"
#include "core/measure/rates/rate.h"

namespace soakwright {

struct RampCase {
  const WeldCase& weld;
  const Stage& stage;
  const RampStage& ramp;
  StageTime when;
  std::vector<BlindSpot> blind_spots;
  [[nodiscard]] bool heats() const { return ramp.direction == RampStage::Direction::heat; }
};

/// `rate_max` and `rate_min`, where they are given.
void evaluate_rates(const RampCase& ramp);

/// An inconclusive finding for each blind spot.
void add_blind_spots(const RampCase& ramp, const Requirement& requirement);

}  // namespace soakwright
