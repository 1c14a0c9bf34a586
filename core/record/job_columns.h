// SPDX-License-Identifier: GPL-3.0-or-later
// Which column of the log each entry of the job means.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/read/log_table.h"

namespace soakwright {

/// The index into table.columns that `said` means: a header cell or a name without unit (case and outer
/// spaces do not count), or the column's number in the file. `line` is the job's.
Result<std::size_t> find_column(const LogTable& table, const std::string& said, const Job& job,
                                std::size_t line);

/// For each entry of job.thermocouples its column.
Result<std::vector<std::size_t>> columns_of_entries(const LogTable& table, const Job& job);

}  // namespace soakwright
