// The door of this room: a record held against a procedure.
#pragma once

#include <memory>
#include <span>

#include "core/judge/verdict.h"
#include "core/measure/groundwork.h"
#include "core/problems/problem.h"
#include "core/procedure/job.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// Judges `record` against `procedure`, weld by weld as the job says (one weld where there is no job).
/// clashes_between(procedure, job) and clashes_with(record, procedure, job) must be empty.
Verdicts judge(const Record& record, const Procedure& procedure, const Job* job);

/// What only shows when the record is known: `spread_within` and a judged channel that no job places along
/// the work, a guarded decision and a channel that no job gives a tolerance. Empty where the procedure can be
/// judged on this record.
Problems clashes_with(const Record& record, const Procedure& procedure, const Job* job);

/// The same on groundwork that a judgement before this one may have laid; it fits while the bridge is the
/// same.
/// `earlier` are the earlier records of the job's welds, judged before, in order.
Verdicts judge(const Record& record, const Procedure& procedure, const Job* job, const Groundwork& ground,
               std::span<const EarlierCycle> earlier = {});
/// `before` where it fits (it may be null), else new.
std::shared_ptr<const Groundwork> groundwork_for(const Record& record, const Procedure& procedure,
                                                 const std::shared_ptr<const Groundwork>& before);

}  // namespace soakwright
