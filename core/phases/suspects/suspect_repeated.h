// SPDX-License-Identifier: GPL-3.0-or-later
// Stuck, by the readings alone: a reading, or all channels' row, repeated far longer than this
// record's own scatter allows, whether the others move or not.
#pragma once

#include <vector>

#include "core/phases/group_course.h"
#include "core/phases/phase.h"
#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// In the order of the channels. Near ambient nobody is accused of repeating itself with all the others.
std::vector<Suspect> find_repeated(const RowTable& table, const SampledRecord& sampled,
                                   const GroupCourse& course);

}  // namespace soakwright
