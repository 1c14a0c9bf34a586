// SPDX-License-Identifier: GPL-3.0-or-later
// Reversed: a channel that falls while the others rise and rises while they fall, as a pair connected the
// wrong way round does at one end.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"
#include "core/phases/suspects/readings/sudden_steps.h"

namespace soakwright {

std::vector<Suspect> find_reversed(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps);

}  // namespace soakwright
