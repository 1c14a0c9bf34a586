// SPDX-License-Identifier: GPL-3.0-or-later
// From the stamps of the rows to one time axis that only runs forward. What does not is put right where that
// is safe, and always said.
//
// 1. midnight in stamps without a date       4. a clock put forward, where the job names it
// 2. several rows with one time              5. interval and gaps
// 3. a clock put back, or a faulty one
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

struct TimeAxis {
  std::vector<double> times_s;
  RecorderClock clock;
  double interval_s = 0.0;
  std::vector<std::size_t> breaks;
  std::vector<Notice> notices;
};

/// The job (may be null) can name the moment at which the clock was put forward, the date of the first row of
/// a log with a time of day only, and date and time of an elapsed time's zero; where the log contradicts it,
/// that is a problem of the job.
Result<TimeAxis> make_time_axis(const LogTable& table, const std::string& path, const Job* job);

}  // namespace soakwright
