// SPDX-License-Identifier: GPL-3.0-or-later
// Where a procedure and a job do not fit together (check_compatibility(), job_file.h).
#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/procedure/compatibility_problems.h"
#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/heat/preheat_checks.h"
#include "core/procedure/job/job_file.h"

namespace soakwright {
namespace {

using compatibility_problems::Lacking;
using compatibility_problems::LimitByThickness;

template <typename Rule, typename Limit>
bool is_rule(const std::optional<Limit>& limit) {
  return limit && std::holds_alternative<Rule>(*limit);
}

/// A weld that is evaluated.
struct EvaluatedWeld {
  std::optional<std::string> number;  ///< nullopt unless the job has a [[weld]] for each
  std::optional<Thickness> thickness;
};

std::vector<EvaluatedWeld> evaluated_welds(const Procedure& procedure, const Job* job) {
  std::vector<EvaluatedWeld> out;
  if (job)
    for (const WeldEntry& weld : job->welds)
      out.push_back({weld.number, weld.thickness ? weld.thickness : procedure.thickness});
  if (out.empty()) out.push_back({std::nullopt, procedure.thickness});
  return out;
}

/// A largest limit that a thickness puts below the smallest one.
template <typename Most, typename Least>
bool turned_round(const std::optional<Most>& most, const std::optional<Least>& least) {
  return most && least && *most < *least;
}

void check_ramp(const RampStage& ramp, const LimitByThickness& limit,
                const std::optional<Thickness>& thickness, Problems& problems) {
  if (!is_rule<RateRule>(ramp.rate_max)) return;
  const auto most = limit_at(*ramp.rate_max, thickness);
  if (!most)
    problems.push_back(compatibility_problems::rate_max_without_thickness(limit));
  else if (turned_round(most, ramp.rate_min))
    problems.push_back(compatibility_problems::rate_max_below_rate_min(limit));
}

void check_hold(const HoldStage& hold, const LimitByThickness& limit,
                const std::optional<Thickness>& thickness, Problems& problems) {
  if (!is_rule<TimeRule>(hold.time_min)) return;
  const auto least = limit_at(*hold.time_min, thickness);
  if (!least)
    problems.push_back(compatibility_problems::time_min_without_thickness(limit));
  else if (turned_round(hold.time_max_s, least))
    problems.push_back(compatibility_problems::time_min_above_time_max(limit));
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
  if (!job || job->thermocouples.empty()) {
    problems.push_back(compatibility_problems::positions_without_job(procedure, *stage));
    return;
  }
  for (const ThermocoupleEntry& entry : job->thermocouples)
    if (is_evaluated(entry) && !entry.position_m)
      problems.push_back(compatibility_problems::thermocouple_without_position(
          job->file, entry.line, entry.name.value_or(entry.column), *stage));
}

/// What a thermocouple's entry lacks for an uncertainty budget; nullopt if nothing.
std::optional<Lacking> lacking(const ThermocoupleEntry& entry) {
  if (!entry.tolerance) return entry.type ? Lacking::tolerance : Lacking::type_and_tolerance;
  const bool needs_type = entry.tolerance->kind != Tolerance::Kind::fixed;
  return needs_type && !entry.type ? std::optional{Lacking::type} : std::nullopt;
}

/// A guarded decision rests on the tolerance of every thermocouple on the work; none is invented. Columns
/// that the job does not list show when the record is read.
void check_tolerances(const Procedure& procedure, const Job* job, Problems& problems) {
  if (procedure.evaluation.decision != Decision::guarded) return;
  if (!job || job->thermocouples.empty()) {
    problems.push_back(compatibility_problems::tolerances_without_job(procedure));
    return;
  }
  for (const ThermocoupleEntry& entry : job->thermocouples) {
    const std::optional<Lacking> lacks = on_the_work(entry.role) ? lacking(entry) : std::nullopt;
    if (lacks)
      problems.push_back(compatibility_problems::thermocouple_without_tolerance(
          job->file, entry.line, entry.name.value_or(entry.column), *lacks));
  }
}

}  // namespace

Problems check_compatibility(const Procedure& procedure, const Job* job) {
  Problems problems;
  check_tolerances(procedure, job, problems);
  const std::vector<EvaluatedWeld> welds = evaluated_welds(procedure, job);
  for (const Stage& stage : procedure.stages)
    for (const EvaluatedWeld& weld : welds) {
      const LimitByThickness limit{procedure, stage, job, weld.number};
      if (const auto* ramp = std::get_if<RampStage>(&stage.specified))
        check_ramp(*ramp, limit, weld.thickness, problems);
      if (const auto* hold = std::get_if<HoldStage>(&stage.specified))
        check_hold(*hold, limit, weld.thickness, problems);
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
