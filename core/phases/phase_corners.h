// SPDX-License-Identifier: GPL-3.0-or-later
// Where one phase ends and the next begins: the point at which the line of the ramp meets the line of the
// level, both fitted beside the bend and not in it, so that noise, lag and overshoot move it little.
#pragma once

#include <vector>

#include "core/phases/phase_runs.h"

namespace soakwright {

struct Corner {
  double time_s = 0.0;
  double celsius = 0.0;
};

/// The corners before, between and after the runs: one more than there are runs.
std::vector<Corner> phase_corners(const GroupCourse& course, const std::vector<Run>& runs);

}  // namespace soakwright
