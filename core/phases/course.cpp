// SPDX-License-Identifier: GPL-3.0-or-later
// 1. sample_record(): a few thousand cells of time  -> SampledRecord
// 2. group_course(): one temperature at each time   -> GroupCourse
// 3. phases_of(): heat, hold, cool, idle            -> Phase
// 4. suspects_of(): channels that look wrong        -> Suspect
#include "core/phases/course.h"

#include "core/phases/group_course.h"
#include "core/phases/phases_of.h"
#include "core/phases/sampled_record.h"
#include "core/phases/suspects/suspects_of.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

// 36 s of a day, 2.4 min of four days: below what a corner may be off.
constexpr std::size_t kMostCells = 2400;

}  // namespace

Course course_of(const Record& record) {
  Course course;
  const SampledRecord sampled = sample_record(record, kMostCells);
  const GroupCourse group = group_course(record, sampled);
  // Neither looks at what the other finds.
  parallel_for(2, sampled.cells() * sampled.traces.size(), [&](std::size_t which) {
    if (which == 0)
      course.suspects = suspects_of(record, sampled, group);
    else
      course.phases = phases_of(record, sampled, group);
  });
  return course;
}

}  // namespace soakwright
