// SPDX-License-Identifier: GPL-3.0-or-later
// The records of a job's welds before this one: read and evaluated by themselves, for a hold that adds up
// over all of them.
#pragma once

#include <vector>

#include "core/analyse.h"
#include "core/evaluate/analysis.h"
#include "core/problems/problem.h"
#include "core/system/watch.h"

namespace soakwright {

/// Reads what analysis.job names as [[previous_record]]. Refused, with the job's file and line: a record with
/// the readings of this one or of one named before, one whose place in time is not known, one that is not
/// over before the next begins, and a job of it that does not have this job's welds. `request` may name other
/// files in their place.
Result<std::vector<PreviousRecord>> read_previous_records(const Analysis& analysis, const Request& request,
                                                          const Watch& watch);

/// What another procedure asks that cannot be evaluated with these records; empty where it can.
Problems check_previous_records(const Analysis& analysis, const Procedure& procedure);

/// Evaluates each against the analysis' procedure; `verdicts` and `ground` of each are set.
void evaluate_previous_records(Analysis& analysis);

/// What the evaluating of this record needs of them.
std::vector<PreviousCycle> cycles_of(const std::vector<PreviousRecord>& earlier);

}  // namespace soakwright
