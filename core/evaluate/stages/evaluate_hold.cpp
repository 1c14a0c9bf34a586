// SPDX-License-Identifier: GPL-3.0-or-later
// A hold: its course, then each requirement in the order in which results list them.
#include <limits>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/stages/hold_case.h"
#include "core/evaluate/stages/stage_evaluations.h"
#include "core/measure/extremes.h"
#include "core/measure/holds/hold_time.h"

namespace soakwright {
namespace {

void add_course(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  StageCourse course;
  course.weld = weld.weld;
  course.number = hold.stage.number;
  course.kind = "hold";
  course.continuous = hold.hold.continuous;
  course.in_range = hold.hold.in_range;
  course.edge_crossings = hold.hold.edge_crossings;
  for (const std::size_t i : hold.hold.own) {
    const auto& member = hold.hold.range.in_range_by[i].ended_by;
    course.ended_by.push_back(member ? std::optional{weld.name(weld.group[*member])} : std::nullopt);
  }
  course.by_excursion_allowed = hold_alternatives(hold);
  if (hold.hold.period) {
    course.start_s = hold.hold.period->first;
    course.end_s = hold.hold.period->second;
  }
  const HoldPeriods periods = periods_around(weld.holds, hold.index);
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    const Trace& trace = weld.set.traces[weld.group[member]];
    StageChannel channel;
    channel.name = trace.name;
    const InAndOut times = in_and_out_of_hold(hold.hold.range.channels[member], periods, weld.time());
    channel.in_s = times.in_s;
    channel.out_s = times.out_s;
    if (hold.hold.period) {
      if (const auto summary = summary_of(trace, {*hold.hold.period})) {
        channel.min_c = summary->min_c;
        channel.max_c = summary->max_c;
        channel.mean_c = summary->mean_c;
      }
    }
    course.channels.push_back(std::move(channel));
  }
  weld.out.stages.push_back(std::move(course));
}

/// Over the whole hold period, excursions included.
void evaluate_spread(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  if (!has_spread_requirement(weld, hold.stage, hold.specified.spread_within_m)) return;
  Requirement requirement = hold.start(RequirementKind::spread, hold.specified.spread_max->kelvin());
  SpecifiedSpread how;
  how.within_m = hold.specified.spread_within_m;
  how.limit_k = requirement.limit;
  how.guard = weld.guard;
  Spread spread;
  SpreadGaps gaps;
  std::vector<Finding> unknown;
  if (hold.hold.period) {
    spread = measure_spread(weld.record, weld.set, weld.group, {*hold.hold.period}, how);
    unknown = unknown_places(weld, requirement, weld.group, *hold.hold.period,
                             -std::numeric_limits<double>::infinity());
    if (!unknown.empty()) gaps.unseen = Sentence::spread_unseen_in_hold;
  } else {
    gaps.not_measured = Sentence::spread_without_hold;
  }
  add_spread(weld, requirement, spread, gaps);
  if (spread.widest && requirement.verdict == Verdict::inconclusive)
    weld.out.findings.insert(weld.out.findings.end(), unknown.begin(), unknown.end());
  hold.finish(std::move(requirement));
}

}  // namespace

void HoldCase::add_own_finding(const Requirement& requirement) const {
  if (requirement.verdict == Verdict::met) return;
  Finding finding =
      finding_on(requirement, requirement.verdict == Verdict::not_met ? Finding::Kind::not_met
                                                                      : Finding::Kind::inconclusive);
  finding.channel = requirement.channel;
  finding.from_s = requirement.from_s;
  finding.to_s = requirement.to_s;
  finding.extreme = requirement.measured_quantity();
  weld.out.findings.push_back(std::move(finding));
}

void evaluate_hold(const WeldCase& weld, const Stage& stage, const HoldStage& specified, std::size_t index) {
  const HoldCase hold{weld, stage, specified, index, weld.holds[index]};
  add_course(hold);
  if (specified.time_min) evaluate_hold_time(hold);
  if (specified.time_max_s) evaluate_hold_time_max(hold);
  evaluate_excursions(hold);
  if (specified.high) evaluate_over(hold);
  if (specified.spread_max) evaluate_spread(hold);
  if (specified.edge_fraction_min) evaluate_edge(hold);
  if (specified.tempering_min)
    evaluate_tempering(hold, RequirementKind::tempering_min, *specified.tempering_min);
  if (specified.tempering_max)
    evaluate_tempering(hold, RequirementKind::tempering_max, *specified.tempering_max);
}

}  // namespace soakwright
