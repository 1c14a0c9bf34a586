// SPDX-License-Identifier: GPL-3.0-or-later
// Where a procedure and a job do not fit together (check_compatibility(), job_file.h).
#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/heat/preheat_checks.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/toml/toml_tree.h"

namespace soakwright {
namespace {

Problem at_stage(const Procedure& procedure, const Stage& stage, std::string what, std::string help) {
  return {ProblemKind::bad_input, procedure.file, stage.line, std::move(what), std::move(help)};
}

template <typename Rule, typename Limit>
bool is_rule(const std::optional<Limit>& limit) {
  return limit && std::holds_alternative<Rule>(*limit);
}

/// A weld to be evaluated: how it is called in messages, and its thickness.
struct WeldAsked {
  std::string name;
  std::optional<Thickness> thickness;
  std::string help;  ///< where a thickness can be given
};

std::vector<WeldAsked> welds_asked(const Procedure& procedure, const Job* job) {
  constexpr const char* kPlain = R"(add `thickness = "…"` to the procedure or the job's [[weld]])";
  std::vector<WeldAsked> out;
  if (job)
    for (const WeldEntry& weld : job->welds)
      out.push_back({fmt::format(" for weld {}", weld.number),
                     weld.thickness ? weld.thickness : procedure.thickness, kPlain});
  if (!out.empty()) return out;
  // `weld = "W-117"` has no room for a thickness.
  out.push_back(
      {"", procedure.thickness,
       job && job->weld
           ? fmt::format("add `thickness = \"…\"` to the procedure, or write in the job, in place of "
                         "`weld`: [[weld]], `number = \"{}\"`, `thickness = \"…\"`",
                         shown(*job->weld))
           : kPlain});
  return out;
}

/// A largest limit that a thickness puts below the smallest one.
template <typename Most, typename Least>
bool turned_round(const std::optional<Most>& most, const std::optional<Least>& least) {
  return most && least && *most < *least;
}

void check_ramp(const Procedure& procedure, const Stage& stage, const RampStage& ramp, const WeldAsked& weld,
                Problems& problems) {
  if (!is_rule<RateRule>(ramp.rate_max)) return;
  const auto most = limit_at(*ramp.rate_max, weld.thickness);
  if (!most)
    problems.push_back(
        at_stage(procedure, stage,
                 fmt::format("`rate_max` depends on the thickness, but no thickness is given{}", weld.name),
                 weld.help));
  else if (turned_round(most, ramp.rate_min))
    problems.push_back(at_stage(procedure, stage,
                                fmt::format("`rate_max` comes out below `rate_min`{}", weld.name),
                                "look at the rule, the thickness and `rate_min`"));
}

void check_hold(const Procedure& procedure, const Stage& stage, const HoldStage& hold, const WeldAsked& weld,
                Problems& problems) {
  if (!is_rule<TimeRule>(hold.time_min)) return;
  const auto least = limit_at(*hold.time_min, weld.thickness);
  if (!least)
    problems.push_back(
        at_stage(procedure, stage,
                 fmt::format("`time_min` depends on the thickness, but no thickness is given{}", weld.name),
                 weld.help));
  else if (turned_round(hold.time_max_s, least))
    problems.push_back(at_stage(procedure, stage,
                                fmt::format("`time_min` comes out above `time_max`{}", weld.name),
                                "look at the rule, the thickness and `time_max`"));
}

bool is_evaluated(const ThermocoupleEntry& entry) {
  return (entry.role == ThermocoupleRole::control || entry.role == ThermocoupleRole::monitor) &&
         entry.zone == Zone::soak;
}

/// `spread_within` needs to know where each evaluated thermocouple sits.
void check_places(const Procedure& procedure, const Job* job, Problems& problems) {
  const auto stage = std::find_if(procedure.stages.begin(), procedure.stages.end(),
                                  [](const Stage& one) { return spread_within_of(one).has_value(); });
  if (stage == procedure.stages.end()) return;
  constexpr const char* kHelp =
      "say where each evaluated thermocouple sits: `position = \"1.2 m\"` in its [[thermocouple]]";
  if (!job || job->thermocouples.empty())
    problems.push_back(at_stage(procedure, *stage,
                                "`spread_within` is specified, and no job says where the thermocouples sit",
                                kHelp));
  else
    for (const ThermocoupleEntry& entry : job->thermocouples)
      if (is_evaluated(entry) && !entry.position_m)
        problems.push_back(
            {ProblemKind::bad_input, job->file, entry.line,
             fmt::format("thermocouple \"{}\" has no `position`, and stage {} of the procedure specifies "
                         "`spread_within`",
                         entry.name.value_or(entry.column), stage->number),
             kHelp});
}

/// What a thermocouple's entry lacks for an uncertainty budget; empty where nothing.
std::string lacking(const ThermocoupleEntry& entry) {
  if (!entry.tolerance) return entry.type ? "no `tolerance`" : "neither `type` nor `tolerance`";
  const bool needs_type = entry.tolerance->kind != Tolerance::Kind::fixed;
  return needs_type && !entry.type ? "no `type`" : "";
}

/// A guarded decision rests on the tolerance of every thermocouple on the work; none is invented. Columns
/// that the job does not list show when the record is read.
void check_tolerances(const Procedure& procedure, const Job* job, Problems& problems) {
  if (procedure.evaluation.decision != Decision::guarded) return;
  constexpr const char* kHelp =
      "give `type = \"K\"` and `tolerance = \"class 1\"` (or \"class 2\", \"standard\", \"special\", "
      "\"±1.1 C\") in its [[thermocouple]]";
  if (!job || job->thermocouples.empty()) {
    problems.push_back(
        {ProblemKind::bad_input, procedure.file, 0,
         "`decision_rule = \"guarded\"`, and no job gives the thermocouples' `type` and `tolerance`",
         "name a job with a [[thermocouple]] for each, or write `decision_rule = \"simple\"`"});
    return;
  }
  for (const ThermocoupleEntry& entry : job->thermocouples) {
    const bool on_the_work = entry.role == ThermocoupleRole::control ||
                             entry.role == ThermocoupleRole::monitor || entry.role == ThermocoupleRole::spare;
    const std::string what = on_the_work ? lacking(entry) : std::string{};
    if (what.empty()) continue;
    problems.push_back({ProblemKind::bad_input, job->file, entry.line,
                        fmt::format("`decision_rule = \"guarded\"`, and thermocouple \"{}\" has {}",
                                    entry.name.value_or(entry.column), what),
                        kHelp});
  }
}

}  // namespace

Problems check_compatibility(const Procedure& procedure, const Job* job) {
  Problems problems;
  check_tolerances(procedure, job, problems);
  const std::vector<WeldAsked> welds = welds_asked(procedure, job);
  for (const Stage& stage : procedure.stages)
    for (const WeldAsked& weld : welds) {
      if (const auto* ramp = std::get_if<RampStage>(&stage.asked))
        check_ramp(procedure, stage, *ramp, weld, problems);
      if (const auto* hold = std::get_if<HoldStage>(&stage.asked))
        check_hold(procedure, stage, *hold, weld, problems);
    }
  check_places(procedure, job, problems);
  const Problems hydrogen = check_hydrogen_thickness(procedure, job);
  problems.insert(problems.end(), hydrogen.begin(), hydrogen.end());
  if (job) {
    const Problems of_preheat = check_preheat(procedure, *job);
    problems.insert(problems.end(), of_preheat.begin(), of_preheat.end());
  }
  return problems;
}

}  // namespace soakwright
