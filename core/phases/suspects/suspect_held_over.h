// SPDX-License-Identifier: GPL-3.0-or-later
// Stuck, all of them and throughout: the recorder writes rows more often than its readings are taken.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// One suspect for each channel, or none: all channels repeat each row several times, for more than a minute,
/// and then change at once by many digits. A slow recorder of coarse digits does not: there the channels
/// change one by one, and by one digit.
std::vector<Suspect> find_held_over(const RowTable& table);

}  // namespace soakwright
