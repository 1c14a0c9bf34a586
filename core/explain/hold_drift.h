// When a hold could no longer become long enough.
#pragma once

#include <optional>
#include <vector>

#include "core/measure/trace.h"
#include "core/procedure/procedure.h"

namespace soakwright {

struct HoldDrift {
  double at_s = 0.0;
  bool broke_off = false;  ///< a stretch ended there; else nobody was in, and too little time was left
  double left_s = 0.0;     ///< until the work left the band for good
};

/// `stretches` in time order, the hold's own; `wanted_s` is what is asked of this record. The work left the
/// band for good at the end of the last stretch: at a moment t a hold that is running since s can still last
/// until then, and one that is not can begin at t. Continuous, the longest such hold counts; accumulated,
/// what was held before t and all that is left. Nothing where the stretches are long enough, or where there
/// are none.
std::optional<HoldDrift> hold_drift(const std::vector<Span>& stretches, double wanted_s,
                                    HoldStage::Count count, double begin_s);

}  // namespace soakwright
