// SPDX-License-Identifier: GPL-3.0-or-later
// Where a procedure cannot be evaluated on this record (check_record(), evaluation.h).
#include <fmt/format.h>

#include "core/evaluate/evaluation.h"
#include "core/uncertainty/budget.h"

namespace soakwright {
namespace {

void check_places(const Record& record, const Procedure& procedure, Problems& problems) {
  for (const Stage& stage : procedure.stages) {
    if (!spread_within_of(stage)) continue;
    for (const Channel& channel : record.channels) {
      if (!channel.evaluated() || channel.position_m) continue;
      problems.push_back(
          {ProblemKind::bad_input, procedure.file, stage.line,
           fmt::format("`spread_within` is specified, and nothing says where {} sits along the work",
                       channel.name),
           "give its column `position` in the job, or `role = \"off\"`"});
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
      problems.push_back(
          {ProblemKind::bad_input, job != nullptr ? job->file : procedure.file, 0,
           fmt::format("`decision_rule = \"guarded\"`, and the job gives {} neither `type` nor `tolerance`",
                       channel.name),
           "list its column in a [[thermocouple]] with both, or with `role = \"off\"`"});
      continue;
    }
    if (!entry->tolerance || !entry->type || entry->tolerance->kind == Tolerance::Kind::fixed) continue;
    if (published_tolerance(*entry->type, entry->tolerance->kind)) continue;
    problems.push_back(
        {ProblemKind::bad_input, job->file, entry->line,
         fmt::format("`decision_rule = \"guarded\"`, and the tables have no {} for type {} of {}",
                     class_name(entry->tolerance->kind), type_name(*entry->type), channel.name),
         "give the tolerance itself: `tolerance = \"±1.5 C\"`"});
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
