// SPDX-License-Identifier: GPL-3.0-or-later
// A heat or cool stage without a procedure, for tests of rates.
#pragma once

#include <optional>

#include "core/procedure/procedure.h"

namespace soakwright {

/// From `above` to `below` in °C, where they are given.
inline RampStage ramp_between(RampStage::Direction direction, std::optional<double> above,
                              std::optional<double> below = {}) {
  RampStage stage;
  stage.direction = direction;
  if (above) stage.above = Temperature::of_celsius(*above);
  if (below) stage.below = Temperature::of_celsius(*below);
  return stage;
}

}  // namespace soakwright
