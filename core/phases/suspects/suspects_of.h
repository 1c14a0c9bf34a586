// SPDX-License-Identifier: GPL-3.0-or-later
// Channels that look wrong, each with where and why. Nothing is done about them here or anywhere: the reader
// decides.
#pragma once

#include <vector>

#include "core/phases/group_course.h"
#include "core/phases/phase.h"
#include "core/phases/sampled_record.h"
#include "core/record/record.h"

namespace soakwright {

/// In the order of the channels, then of time. Where the channels do not run together (one drives the rest,
/// or they stand in different places of a fire) there is nothing to hold a channel against: only missing
/// readings are said, and what a channel shows by itself.
std::vector<Suspect> suspects_of(const Record& record, const SampledRecord& sampled,
                                 const GroupCourse& course);

}  // namespace soakwright
