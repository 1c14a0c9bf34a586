// SPDX-License-Identifier: GPL-3.0-or-later
// Preheat and bands of a job against the procedure, from which a thickness may come.
#pragma once

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// A thickness that is needed and missing, or outside the published table.
Problems check_preheat(const Procedure& procedure, const Job& job);

}  // namespace soakwright
