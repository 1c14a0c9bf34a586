// What every judging of a record needs and no limit changes: traces, times as integers, tempering. Laid once,
// then shared by judgements that follow.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/measure/tempering.h"
#include "core/measure/trace.h"
#include "core/measure/window_slopes.h"

namespace soakwright {

struct Groundwork {
  double bridge_s = 0.0;
  TraceSet set;
  RowTicks ticks;
  std::vector<std::optional<Tempering>> temperings;  ///< per trace
};

std::shared_ptr<const Groundwork> lay_groundwork(const Record& record, double bridge_s);

}  // namespace soakwright
