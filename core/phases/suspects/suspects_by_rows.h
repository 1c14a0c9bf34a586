// SPDX-License-Identifier: GPL-3.0-or-later
// What only the rows show of the channels: readings repeated, copied, cut off, wild.
#pragma once

#include <vector>

#include "core/phases/group_course.h"
#include "core/phases/phase.h"
#include "core/phases/sampled_record.h"
#include "core/record/record.h"

namespace soakwright {

/// `found` (by the course, per trace of the sample) with what the rows show beside it; where both say the
/// same of one time, once.
void add_suspects_by_rows(const Record& record, const SampledRecord& sampled, const GroupCourse& course,
                          std::vector<std::vector<Suspect>>& found);

}  // namespace soakwright
