// SPDX-License-Identifier: GPL-3.0-or-later
// From a log on disk to a Record.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/record/record.h"
#include "core/system/watch.h"

namespace soakwright {

/// Reads the log at `path` as the job (may be null) says: encoding, dialect, rows, time axis, units, emf,
/// channels, roles, corrections, what was excluded. `dates` wins over the job's choice.
/// Stopped by the watch, it gives an empty list of problems.
Result<std::shared_ptr<const Record>> read_record(const std::string& path, const Job* job,
                                                  std::optional<DateOrder> dates = std::nullopt,
                                                  const Watch& watch = {});

}  // namespace soakwright
