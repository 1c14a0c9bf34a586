// SPDX-License-Identifier: GPL-3.0-or-later
// What a rate limit would have come to otherwise: over other windows, and from one end of the ramp to the
// other.
#pragma once

#include <vector>

#include "core/evaluate/weld_case.h"
#include "core/measure/rates/overall_rate.h"
#include "core/measure/rates/rate.h"

namespace soakwright {

/// 5, 15, 30 and 60 min, then overall; each with its own verdict. `unseen`: something of the stage is not
/// shown, so that nothing is met for certain.
std::vector<RateAlternative> rate_alternatives(const WeldCase& weld, const Requirement& requirement,
                                               const StageRate& rate, const std::vector<OverallRate>& overall,
                                               bool unseen);

/// An overall rate against a largest limit: not met where it is above it by more than the noise of its two
/// ends (and U), and so is the one between crossings that last; met at or below it (guarded: less U);
/// inconclusive between and where there is none.
Verdict overall_verdict(const WeldCase& weld, const Requirement& requirement, const OverallRate& rate,
                        double noise_k);

/// U of a mean rate; 0 where the decision is simple.
double overall_uncertainty(const WeldCase& weld, std::size_t trace, const MeanRate& mean);

}  // namespace soakwright
