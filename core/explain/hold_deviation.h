// SPDX-License-Identifier: GPL-3.0-or-later
// When a hold could no longer become long enough.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/traces/trace.h"
#include "core/procedure/procedure.h"

namespace soakwright {

struct HoldDeviation {
  double at_s = 0.0;
  std::optional<std::size_t> broke_off;  ///< the in-range time that ended there too early, where one did
  double left_s = 0.0;                   ///< until the work left the range for good
};

/// `in_range` in time order, the hold's own; `wanted_s` is what is asked of this record. The work left the
/// range for good at the end of the last time in range: at a moment t a hold that is running since s can
/// still last until then, and one that is not can begin at t. Continuous, the longest such hold counts;
/// accumulated, what was held before t and all that is left. Nullopt if the times in range are long enough,
/// or where there are none.
std::optional<HoldDeviation> hold_deviation(const std::vector<Span>& in_range, double wanted_s,
                                            HoldStage::Count count, double begin_s);

}  // namespace soakwright
