// SPDX-License-Identifier: GPL-3.0-or-later
// A reason where nothing needs one: it would be read as an exclusion that does not exist.
#pragma once

#include "core/procedure/job/job.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright {

/// Complains where the thermocouple is evaluated and has a `reason` all the same.
void check_reason(const ThermocoupleEntry& entry, TableReader& in);

}  // namespace soakwright
