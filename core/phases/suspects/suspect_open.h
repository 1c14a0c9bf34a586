// SPDX-License-Identifier: GPL-3.0-or-later
// Open circuit: a channel that gives no reading while the recorder runs and the others have one, or that
// stands at a value where no work can be, as recorders show it for a broken wire.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"

namespace soakwright {

/// No reading while there should be one.
std::vector<Suspect> find_missing(const ExaminedChannel& examined);
/// Stands far above or below where the others ever are.
std::vector<Suspect> find_standing_far_off(const ExaminedChannel& examined);

}  // namespace soakwright
