// SPDX-License-Identifier: GPL-3.0-or-later
// Reversed, told by where the readings are and not by how they run: as far below ambient as the others are
// above it. For records in which the readings end (below the recorder's range) before they have shown a
// direction.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"
#include "core/phases/suspects/readings/sudden_steps.h"

namespace soakwright {

std::vector<Suspect> find_mirrored(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps);

}  // namespace soakwright
