// SPDX-License-Identifier: GPL-3.0-or-later
// Limits for what a record shows: its phases as stages, each with a round limit that the record keeps with
// room to spare.
//
// A starting point for a person who writes a procedure; it says nothing about what is required.
#pragma once

#include <optional>

#include "core/evaluate/analysis.h"
#include "core/problems/problem.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// `analysis` has record, course and job only, as that of inspect(). Without `unit` the unit of the log's
/// first evaluated thermocouple. A bad_input problem where the record shows neither heating nor hold nor
/// cooling.
Result<Procedure> proposed_procedure(const Analysis& analysis, std::optional<TemperatureUnit> unit);

}  // namespace soakwright
