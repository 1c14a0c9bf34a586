// SPDX-License-Identifier: GPL-3.0-or-later
// The table [import] of a job: what a person settled about the log.
#pragma once

#include "core/procedure/job/job.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright {

void read_import_choices(TableReader& in, ImportChoices& reading);

}  // namespace soakwright
