// What a rate limit would have come to on another alternatives: over other windows, and from one end of the
// ramp to the other.
#pragma once

#include <vector>

#include "core/evaluate/weld_case.h"
#include "core/measure/rate.h"

namespace soakwright {

/// 5, 15, 30 and 60 min, then overall; each with its own verdict. `unseen`: something of the stage is not
/// shown, so that nothing is met for certain.
std::vector<RateAlternative> rate_bases(const WeldCase& weld, const Requirement& requirement,
                                        const StageRate& rate, const std::vector<OverallRate>& overall,
                                        bool unseen);

/// U of a rate from one end of a ramp to the other; 0 where the decision is simple.
double overall_uncertainty(const WeldCase& weld, const OverallRate& rate);

}  // namespace soakwright
