// SPDX-License-Identifier: GPL-3.0-or-later
// Stuck: a channel that does not move while the others do. A flat hold in whole degrees does not move either,
// but then nor do the others.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"
#include "core/phases/suspects/readings/sudden_steps.h"

namespace soakwright {

/// `steps` tells a channel that fell somewhere first (and is off the work) from one that just stopped.
std::vector<Suspect> find_stuck(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps);

}  // namespace soakwright
