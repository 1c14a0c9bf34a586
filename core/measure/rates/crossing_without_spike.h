// SPDX-License-Identifier: GPL-3.0-or-later
// Where a channel crosses a level if one of the two readings beside the crossing is a spike.
#pragma once

#include "core/measure/traces/trace.h"

namespace soakwright {

enum class Outward { earlier, later };

/// `at_s` is a crossing of `level_c` at an end of a ramp that lies on the other side of `outward`. Returns
/// the crossing farthest outward of: itself; that without the reading beyond it; that without the reading
/// before it. A reading left out is replaced by the line through the two readings within the ramp beside it,
/// continued, or by the line across it, whichever crosses sooner. So the corner of a straight ramp moves
/// nothing, and a ramp is never made shorter.
double crossing_without_spike(const Trace& trace, double at_s, double level_c, Outward outward);

}  // namespace soakwright
