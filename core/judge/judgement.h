// The door of this room: a record held against a procedure.
#pragma once

#include "core/judge/verdict.h"
#include "core/procedure/job.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// Judges `record` against `procedure`, weld by weld as the job says (one weld where there is no job).
/// clashes_between(procedure, job) must be empty.
Verdicts judge(const Record& record, const Procedure& procedure, const Job* job);

}  // namespace soakwright
