// SPDX-License-Identifier: GPL-3.0-or-later
// What a person settled about the log: as the reader takes it, and as a list for people.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/read/reading_settings.h"
#include "core/record/column_kind.h"
#include "core/record/record.h"

namespace soakwright {

/// `job` may be null; `dates` wins over the job's choice.
GivenSettings given_settings(const Job* job, std::optional<DateOrder> dates);

/// The settings that were given, and what the job says of a column otherwise than the log: its name, unit,
/// kind, and what its emf needs. What a thermocouple is used for is no change of the file. `kinds`: what each
/// column is without the job.
std::vector<HandChange> hand_changes(const GivenSettings& given, const Job* job, const LogTable& table,
                                     std::span<const ColumnKind> kinds);

}  // namespace soakwright
