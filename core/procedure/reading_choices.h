// The table [reading] of a job: what a person settled about the log.
#pragma once

#include "core/procedure/job.h"
#include "core/procedure/table_reader.h"

namespace soakwright {

void read_reading_choices(TableReader& in, ReadingChoices& reading);

}  // namespace soakwright
