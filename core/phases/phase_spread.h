// SPDX-License-Identifier: GPL-3.0-or-later
// The largest spread of the evaluated group within each phase, over every row and not a sample of them.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright {

/// Fills spread_max_k of each phase: highest less lowest of the evaluated channels known in a row and not put
/// exclusion. Where fewer than two are known all through, it is 0.
void measure_spread(const Record& record, std::vector<Phase>& phases);

}  // namespace soakwright
