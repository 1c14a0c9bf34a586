// SPDX-License-Identifier: GPL-3.0-or-later
// A heat or a cool stage: its course, its rates (evaluate_rate), its spread.
#include "core/evaluate/stages/ramp_case.h"
#include "core/evaluate/stages/stage_evaluations.h"
#include "core/measure/extremes.h"
#include "core/measure/spread.h"

namespace soakwright {
namespace {

Statement blind_spot(const RampCase& ramp, const BlindSpot& spot) {
  const std::string& name = ramp.weld.name(spot.trace);
  if (spot.reason == BlindSpot::Reason::hole)
    return state(Sentence::no_readings_from, name, FromTo{spot.time.first, spot.time.second});
  return state(spot.reason == BlindSpot::Reason::starts_above ? Sentence::record_starts_above
                                                              : Sentence::record_ends_above,
               name, Temperature::of_celsius(*spot.celsius), Specified{*ramp.ramp.above});
}

void evaluate_spread(const RampCase& ramp) {
  const WeldCase& weld = ramp.weld;
  if (!has_spread_requirement(weld, ramp.stage, ramp.ramp.spread_within_m)) return;
  Requirement requirement =
      requirement_for(RequirementKind::spread, ramp.stage.number, weld.weld, ramp.ramp.spread_max->kelvin());
  SpecifiedSpread how;
  if (ramp.ramp.above) how.above_c = ramp.ramp.above->celsius();
  how.within_m = ramp.ramp.spread_within_m;
  how.limit_k = requirement.limit;
  how.guard = weld.guard;
  const Spread spread = measure_spread(weld.record, weld.set, weld.group, {ramp.when.spread_time}, how);
  SpreadGaps gaps;
  if (!ramp.blind_spots.empty()) gaps.unseen = Sentence::stage_not_all_shown;
  add_spread(weld, requirement, spread, gaps);
  add_blind_spots(ramp, requirement);
  weld.out.requirements.push_back(std::move(requirement));
}

StageCourse course_of(const RampCase& ramp) {
  StageCourse course;
  course.weld = ramp.weld.weld;
  course.number = ramp.stage.number;
  course.kind = ramp.heats() ? "heat" : "cool";
  course.start_s = ramp.when.time.first;
  course.end_s = ramp.when.time.second;
  for (const std::size_t index : ramp.weld.group) {
    StageChannel channel;
    channel.name = ramp.weld.name(index);
    if (const auto summary = summary_of(ramp.weld.set.traces[index], {ramp.when.time})) {
      channel.min_c = summary->min_c;
      channel.max_c = summary->max_c;
      channel.mean_c = summary->mean_c;
    }
    course.channels.push_back(std::move(channel));
  }
  return course;
}

}  // namespace

void add_blind_spots(const RampCase& ramp, const Requirement& requirement) {
  for (const BlindSpot& spot : ramp.blind_spots) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = ramp.weld.name(spot.trace);
    finding.from_s = spot.time.first;
    finding.to_s = spot.time.second;
    if (spot.celsius) finding.extreme = Temperature::of_celsius(*spot.celsius);
    finding.what = {blind_spot(ramp, spot)};
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void evaluate_ramp(const WeldCase& weld, const Stage& stage, const RampStage& specified) {
  RampCase ramp{weld, stage, specified, {}, {}};
  ramp.when =
      stage_time(weld.holds, weld.procedure.stages, stage.number - 1, specified.direction, weld.time());
  ramp.blind_spots = blind_spots(weld.set, weld.group, weld.holds, ramp.when, specified);
  weld.out.stages.push_back(course_of(ramp));
  evaluate_rates(ramp);
  if (specified.spread_max) evaluate_spread(ramp);
}

}  // namespace soakwright
