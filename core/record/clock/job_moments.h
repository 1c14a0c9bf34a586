// SPDX-License-Identifier: GPL-3.0-or-later
// What the job says about times, on the record's axis: exclusions, periods, remarks, the part to be
// evaluated.
#pragma once

#include <string>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

/// Fills exclusions, confirmations, periods, remarks, first_row and end_row of `record`, whose channels,
/// times and clock are there. What reaches beyond the record is cut with the notice outside-record; an
/// exclusion, a remark or a time range wholly outside is a problem of the job, a period (which stays as it
/// is) a notice.
Problems place_moments(const Job& job, const LogTable& table, const std::string& path, Record& record);

}  // namespace soakwright
