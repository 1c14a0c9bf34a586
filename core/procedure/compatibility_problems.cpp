// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/compatibility_problems.h"

#include <utility>

#include <fmt/format.h>

#include "core/procedure/job/job_words.h"
#include "core/procedure/toml/toml_tree.h"

namespace soakwright::compatibility_problems {
namespace {

constexpr const char* kLookAtRate = "look at the rule, the thickness and `rate_min`";
constexpr const char* kLookAtTime = "look at the rule, the thickness and `time_max`";

Problem at_stage(const Procedure& procedure, const Stage& stage, std::string what, std::string help) {
  return {ProblemKind::bad_input, procedure.file, stage.line, std::move(what), std::move(help)};
}

/// `weld = "W-117"` has no room for a thickness.
std::string where_to_give_thickness(const LimitByThickness& limit) {
  if (limit.weld || limit.job == nullptr || !limit.job->weld)
    return R"(add `thickness = "…"` to the procedure or the job's [[weld]])";
  return fmt::format(
      "add `thickness = \"…\"` to the procedure, or write in the job, in place of `weld`: [[weld]], `number "
      "= "
      "\"{}\"`, `thickness = \"…\"`",
      shown(*limit.job->weld));
}

}  // namespace

Problem rate_max_without_thickness(const LimitByThickness& limit) {
  return at_stage(
      limit.procedure, limit.stage,
      limit.weld ? fmt::format("`rate_max` depends on the thickness, but no thickness is given for weld {}",
                               *limit.weld)
                 : "`rate_max` depends on the thickness, but no thickness is given",
      where_to_give_thickness(limit));
}

Problem rate_max_below_rate_min(const LimitByThickness& limit) {
  return at_stage(limit.procedure, limit.stage,
                  limit.weld ? fmt::format("`rate_max` comes out below `rate_min` for weld {}", *limit.weld)
                             : "`rate_max` comes out below `rate_min`",
                  kLookAtRate);
}

Problem time_min_without_thickness(const LimitByThickness& limit) {
  return at_stage(
      limit.procedure, limit.stage,
      limit.weld ? fmt::format("`time_min` depends on the thickness, but no thickness is given for weld {}",
                               *limit.weld)
                 : "`time_min` depends on the thickness, but no thickness is given",
      where_to_give_thickness(limit));
}

Problem time_min_above_time_max(const LimitByThickness& limit) {
  return at_stage(limit.procedure, limit.stage,
                  limit.weld ? fmt::format("`time_min` comes out above `time_max` for weld {}", *limit.weld)
                             : "`time_min` comes out above `time_max`",
                  kLookAtTime);
}

Problem positions_without_job(const Procedure& procedure, const Stage& stage) {
  return at_stage(
      procedure, stage, "`spread_within` is specified, and no job says where the thermocouples sit",
      "say where each evaluated thermocouple sits: `position = \"1.2 m\"` in its [[thermocouple]]");
}

Problem thermocouple_without_position(const std::string& file, std::size_t line, const std::string& name,
                                      const Stage& stage) {
  return {ProblemKind::bad_input, file, line,
          fmt::format("thermocouple \"{}\" has no `position`, and stage {} of the procedure specifies "
                      "`spread_within`",
                      name, stage.number),
          "give `position = \"1.2 m\"` in its [[thermocouple]], or `role = \"off\"`"};
}

Problem tolerances_without_job(const Procedure& procedure) {
  return {ProblemKind::bad_input, procedure.file, 0,
          "`decision_rule = \"guarded\"`, and no job gives the thermocouples' `type` and `tolerance`",
          "name a job with a [[thermocouple]] for each, or write `decision_rule = \"simple\"`"};
}

Problem thermocouple_without_tolerance(const std::string& file, std::size_t line, const std::string& name,
                                       Lacking lacking) {
  std::string what;
  switch (lacking) {
    case Lacking::type:
      what = fmt::format("`decision_rule = \"guarded\"`, and thermocouple \"{}\" has no `type`", name);
      break;
    case Lacking::tolerance:
      what = fmt::format("`decision_rule = \"guarded\"`, and thermocouple \"{}\" has no `tolerance`", name);
      break;
    case Lacking::type_and_tolerance:
      what = fmt::format(
          "`decision_rule = \"guarded\"`, and thermocouple \"{}\" has neither `type` nor `tolerance`", name);
      break;
  }
  return {ProblemKind::bad_input, file, line, std::move(what),
          "give `type = \"K\"` and `tolerance = \"class 1\"` (or \"class 2\", \"standard\", \"special\", "
          "\"±1.1 C\") in its [[thermocouple]], or `role = \"off\"`"};
}

Problem no_published_tolerance(const Job& job, const ThermocoupleEntry& entry, const std::string& name) {
  return {ProblemKind::bad_input, job.file, entry.line,
          fmt::format("`decision_rule = \"guarded\"`, and the tables have no {} for type {} of {}",
                      entry.tolerance ? kToleranceWords.of(entry.tolerance->kind) : std::string_view{},
                      entry.type ? kThermocoupleTypeWords.of(*entry.type) : std::string_view{}, name),
          "give the tolerance itself: `tolerance = \"±1.5 C\"`"};
}

}  // namespace soakwright::compatibility_problems
