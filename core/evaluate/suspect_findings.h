// SPDX-License-Identifier: GPL-3.0-or-later
// What a suspicion does to the evaluation: readings of an open, stuck, copied or clipped channel are no
// measurement until a person confirms them, and a suspicion within an evaluated stage is a note.
#pragma once

#include <vector>

#include "core/evaluate/verdict.h"
#include "core/measure/traces/trace.h"
#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright {

/// The confirmation of the job that is about this suspicion; nullptr if there is none.
const Confirmation* confirmation_of(const Record& record, const Suspect& suspect);

/// The times of suspects whose readings are no measurement and that nobody confirmed.
std::vector<UnmeasuredTime> unmeasured_times(const Record& record, const Course& course);

/// A notice for each confirmation without such a suspect.
std::vector<Notice> unused_confirmations(const Record& record, const Course& course);

/// Adds a note for each suspicion that overlaps an evaluated stage of its weld (a stage whose time is not
/// known counts as the whole record). What several channels show at the same time is one note, without a
/// channel.
void note_suspects(const Record& record, const Course& course, Verdicts& verdicts);

}  // namespace soakwright
