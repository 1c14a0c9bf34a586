// SPDX-License-Identifier: GPL-3.0-or-later
// The door of this room: a record held against a procedure.
#pragma once

#include <memory>
#include <span>

#include "core/evaluate/verdict.h"
#include "core/measure/traces/prepared_traces.h"
#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// Evaluates `record` against `procedure`, weld by weld as the job says (one weld where there is no job).
/// check_compatibility(procedure, job) and check_record(record, procedure, job) must be empty.
Verdicts evaluate(const Record& record, const Procedure& procedure, const Job* job);

/// What only shows when the record is known: `spread_within` and an evaluated channel that no job places
/// along the work, a guarded decision and a channel that no job gives a tolerance. Empty where the procedure
/// can be evaluated on this record.
Problems check_record(const Record& record, const Procedure& procedure, const Job* job);

/// The same on prepared_traces that an evaluation before this one may have laid; it fits while the
/// interpolate_max is the same. `earlier` are the previous records of the job's welds, evaluated before, in
/// order.
Verdicts evaluate(const Record& record, const Procedure& procedure, const Job* job,
                  const PreparedTraces& ground, std::span<const PreviousCycle> previous_records = {});
/// `before` where it fits (it may be null), else new. `unmeasured`: readings that are no measurement.
std::shared_ptr<const PreparedTraces> prepared_traces_for(const Record& record, const Procedure& procedure,
                                                          const std::shared_ptr<const PreparedTraces>& before,
                                                          std::vector<UnmeasuredTime> unmeasured = {});

}  // namespace soakwright
