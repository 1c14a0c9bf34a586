// What the job says about time_ranges of time, on the record's axis: exclusions, periods, remarks, the part
// to be evaluated.
#pragma once

#include <string>

#include "core/problems/problem.h"
#include "core/procedure/job.h"
#include "core/read/log_table.h"
#include "core/record/record.h"
#include "core/record/time_axis.h"

namespace soakwright {

/// Fills exclusions, periods, remarks, first_row and end_row of `record`, whose channels and times are there.
Problems place_moments(const Job& job, const LogTable& table, const TimeAxis& axis, const std::string& path,
                       Record& record);

}  // namespace soakwright
