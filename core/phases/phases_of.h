// SPDX-License-Identifier: GPL-3.0-or-later
// The phases of a record, with no procedure: heat, hold, cool and idle.
#pragma once

#include <vector>

#include "core/phases/group_course.h"
#include "core/phases/phase.h"
#include "core/phases/sampled_record.h"
#include "core/record/record.h"

namespace soakwright {

std::vector<Phase> phases_of(const Record& record, const SampledRecord& sampled, const GroupCourse& course);

}  // namespace soakwright
