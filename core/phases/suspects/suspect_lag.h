// SPDX-License-Identifier: GPL-3.0-or-later
// Lag: a channel that follows the others late, or runs ahead of them, all the way.
//
// One delay must explain the whole trace, heating and cooling: so it is not a cooler zone (apart in the hold
// too), not a spread on heating (gone when cooling), and not the few minutes by which a thermocouple inside a
// thick wall is late.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"

namespace soakwright {

std::vector<Suspect> find_lag(const ExaminedChannel& examined);

}  // namespace soakwright
