// SPDX-License-Identifier: GPL-3.0-or-later
// Where a procedure cannot be evaluated on this record (check_record(), evaluation.h).
#include "core/evaluate/evaluation.h"
#include "core/procedure/compatibility_problems.h"
#include "core/uncertainty/budget.h"

namespace soakwright {
namespace {

void check_places(const Record& record, const Procedure& procedure, Problems& problems) {
  for (const Stage& stage : procedure.stages) {
    if (!spread_within_of(stage)) continue;
    for (const Channel& channel : record.channels) {
      if (!channel.evaluated() || channel.position_m) continue;
      problems.push_back(compatibility_problems::thermocouple_without_position(procedure.file, stage.line,
                                                                               channel.name, stage));
    }
  }
}

/// A guarded decision needs the tolerance of every channel on the work, those too that no job lists.
void check_tolerances(const Record& record, const Procedure& procedure, const Job* job, Problems& problems) {
  if (procedure.evaluation.decision != Decision::guarded) return;
  for (const Channel& channel : record.channels) {
    if (!needs_budget(channel)) continue;
    const ThermocoupleEntry* entry =
        job != nullptr && channel.entry ? &job->thermocouples[*channel.entry] : nullptr;
    if (entry == nullptr) {
      problems.push_back(compatibility_problems::thermocouple_without_tolerance(
          job != nullptr ? job->file : procedure.file, 0, channel.name,
          compatibility_problems::Lacking::type_and_tolerance));
      continue;
    }
    if (!entry->tolerance || !entry->type || entry->tolerance->kind == Tolerance::Kind::fixed) continue;
    if (published_tolerance(*entry->type, entry->tolerance->kind)) continue;
    problems.push_back(compatibility_problems::no_published_tolerance(*job, *entry, channel.name));
  }
}

}  // namespace

Problems check_record(const Record& record, const Procedure& procedure, const Job* job) {
  Problems problems;
  check_places(record, procedure, problems);
  check_tolerances(record, procedure, job, problems);
  return problems;
}

}  // namespace soakwright
