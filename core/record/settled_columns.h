// SPDX-License-Identifier: GPL-3.0-or-later
// What each column is, settled from the whole table and the job: names and units that one cell alone leaves
// open, then the kind of each column.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/record/column_kind.h"

namespace soakwright {

/// One kind for each column. Changes the table's names and units where
/// - every temperature column that names no unit otherwise ends in a bare C, F or K ("TC3 F"): its unit. If
///   only some do, that is a problem, unless the job gives `unit`.
/// - what looked like a unit is none ("TC3 (N)"): part of the name.
/// A `unit` of the job that no column needs is a problem. `path` is the log's; `job` may be null.
Result<std::vector<ColumnKind>> settle_columns(LogTable& table, std::span<const double> times_s,
                                               const std::string& path, const Job* job);

}  // namespace soakwright
