// SPDX-License-Identifier: GPL-3.0-or-later
// What every evaluating of a record needs and no limit changes: traces, times as integers, tempering. Laid
// once, then shared by evaluations that follow.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/measure/rates/window_slopes.h"
#include "core/measure/tempering.h"
#include "core/measure/traces/trace.h"

namespace soakwright {

struct PreparedTraces {
  double interpolate_max_s = 0.0;
  std::vector<UnmeasuredTime> unmeasured;
  double tempering_constant = kTemperingConstant;
  TraceSet set;
  RowTicks ticks;
  std::vector<std::optional<Tempering>> temperings;  ///< per trace
};

std::shared_ptr<const PreparedTraces> prepare_traces(const Record& record, double interpolate_max_s,
                                                     std::vector<UnmeasuredTime> unmeasured,
                                                     double tempering_constant);

}  // namespace soakwright
