// SPDX-License-Identifier: GPL-3.0-or-later
// Off the work: a sudden fall or jump that the others do not have, and that stays. A weld run that passes a
// thermocouple, and a draught, are gone again after some minutes and are not accused.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"
#include "core/phases/suspects/readings/sudden_steps.h"

namespace soakwright {

std::vector<Suspect> find_detached(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps);

}  // namespace soakwright
