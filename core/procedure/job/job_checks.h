// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold between the entries of one job file: every thermocouple once, every name once, spares that
// stand for one thermocouple each, welds that exist.
#pragma once

#include "core/procedure/job/job.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright {

/// Complains through `in`, the reader of the whole file. What only the log can tell (a column that it does
/// not have) is left to whoever reads the log.
void check_job(const Job& job, TableReader& in);

/// Complains where the thermocouple is evaluated and has a `reason` all the same: it would be read as an
/// exclusion that does not exist.
void check_reason(const ThermocoupleEntry& entry, TableReader& in);

}  // namespace soakwright
