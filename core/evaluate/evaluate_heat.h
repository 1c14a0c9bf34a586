// SPDX-License-Identifier: GPL-3.0-or-later
// Tempering and hydrogen over the whole curve of each evaluated thermocouple, as facts beside the verdicts.
#pragma once

#include "core/evaluate/weld_case.h"

namespace soakwright {

/// What holds for all welds: constant, reference temperature, what the job says of qualification and
/// hydrogen. Sets `record_case.out.heat`.
void start_heat(const RecordCase& record_case);
/// Adds the weld's thermocouples to `weld.out.heat`, and a note where one is above what was qualified.
void add_heat(const WeldCase& weld);

}  // namespace soakwright
