// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/procedure.h"

#include <algorithm>

namespace soakwright {

std::optional<double> spread_within_of(const Stage& stage) {
  if (const auto* ramp = std::get_if<RampStage>(&stage.specified)) return ramp->spread_within_m;
  if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) return hold->spread_within_m;
  return std::nullopt;
}

double interpolate_max_for(const Procedure& procedure, double interval_s) {
  constexpr double kUsual_s = 120.0;
  if (procedure.evaluation.interpolate_max_s) return *procedure.evaluation.interpolate_max_s;
  return std::max(procedure.record_limits.gap_max_s.value_or(kUsual_s), 2.0 * interval_s);
}

}  // namespace soakwright
