// SPDX-License-Identifier: GPL-3.0-or-later
// Clipped: a channel that ends flat at its highest or lowest reading, where the recorder's range ends.
#pragma once

#include <vector>

#include "core/phases/group_course.h"
#include "core/phases/phase.h"
#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// Makes clipped ones of the stuck `found` (per place of the table) that stand at the channel's highest
/// (lowest) reading, to which it came and which it left in full course, where another channel ends at the
/// same reading or the group goes beyond meanwhile and comes back.
void tell_clipped(const RowTable& table, const GroupCourse& course, std::vector<std::vector<Suspect>>& found);

}  // namespace soakwright
