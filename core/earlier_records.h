// The records of a job's welds before this one: read and judged by themselves, for a hold that adds up over
// all of them.
#pragma once

#include <optional>
#include <vector>

#include "core/judge/analysis.h"
#include "core/problems/problem.h"

namespace soakwright {

/// Reads what analysis.job names as [[earlier]]. Refused, with the job's file and line: a log that is this
/// one or one named before, one that is not over before the next begins (where both have a clock), a job of
/// it that does not have this job's welds, and limits that nobody can judge over several records yet.
Result<std::vector<EarlierRecord>> read_earlier_records(const Analysis& analysis,
                                                        std::optional<DateOrder> dates);

/// What another procedure asks that cannot be judged with these records; empty where it can.
Problems clashes_with_earlier(const Analysis& analysis, const Procedure& procedure);

/// Judges each against the analysis' procedure; `verdicts` and `ground` of each are set.
void judge_earlier_records(Analysis& analysis);

/// What the judging of this record needs of them.
std::vector<EarlierCycle> cycles_of(const std::vector<EarlierRecord>& earlier);

}  // namespace soakwright
