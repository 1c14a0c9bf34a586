// SPDX-License-Identifier: GPL-3.0-or-later
// Notes on thermocouples whose positions do not fit the bands of a local heat treatment. They decide nothing.
#pragma once

#include "core/evaluate/verdict.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// Adds one note for each thermocouple that does not fit, and one for a heated band that is too narrow.
void note_bands(const Record& record, const Procedure& procedure, const Job* job, Verdicts& verdicts);

}  // namespace soakwright
