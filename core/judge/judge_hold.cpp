// A hold: its course, then each requirement in the order in which results list them.
#include <fmt/format.h>

#include "core/judge/hold_case.h"
#include "core/judge/sentences.h"
#include "core/judge/stage_judges.h"
#include "core/measure/extremes.h"
#include "core/measure/hold_time.h"
#include "core/measure/tempering.h"

namespace soakwright {
namespace {

void add_course(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  StageCourse course;
  course.weld = weld.weld;
  course.number = hold.stage.number;
  course.kind = "hold";
  course.core = hold.hold.core;
  course.stretches = hold.hold.stretches;
  course.set_aside = hold.hold.set_aside;
  course.by_grace = hold_bases(hold);
  if (hold.hold.span) {
    course.start_s = hold.hold.span->first;
    course.end_s = hold.hold.span->second;
  }
  const Span around = between_spans(weld.holds, hold.index, weld.time());
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    const Trace& trace = weld.set.traces[weld.group[member]];
    StageChannel channel;
    channel.name = trace.name;
    const InAndOut times = in_and_out(hold.hold.band.channels[member], around);
    channel.in_s = times.in_s;
    channel.out_s = times.out_s;
    if (hold.hold.span) {
      if (const auto summary = summary_of(trace, {*hold.hold.span})) {
        channel.min_c = summary->min_c;
        channel.max_c = summary->max_c;
        channel.mean_c = summary->mean_c;
      }
    }
    if (const auto& tempering = weld.ground.temperings[weld.group[member]]) {
      channel.tempering = tempering->parameter;
      channel.tempering_hours = equivalent_hours(tempering->parameter, hold.hold.low_c);
    }
    course.channels.push_back(std::move(channel));
  }
  weld.out.stages.push_back(std::move(course));
}

void judge_spread(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  Requirement requirement = hold.start(RequirementKind::spread, hold.asked.spread_max->kelvin());
  SpreadAsked how;
  how.limit_k = requirement.limit;
  how.guard = weld.guard;
  const Spread spread =
      hold.hold.span ? measure_spread(weld.record, weld.set, weld.group, hold.hold.stretches, how) : Spread{};
  add_spread(weld, requirement, spread, false);
  hold.finish(std::move(requirement));
}

}  // namespace

void HoldCase::add_own_finding(const Requirement& requirement) const {
  if (requirement.verdict == Verdict::met) return;
  Finding finding =
      finding_on(requirement,
                 requirement.verdict == Verdict::not_met ? Finding::Kind::not_met : Finding::Kind::undecided);
  finding.channel = requirement.channel;
  finding.from_s = requirement.from_s;
  finding.to_s = requirement.to_s;
  finding.extreme = requirement.measured;
  finding.text = requirement.text;
  weld.out.findings.push_back(std::move(finding));
}

std::string HoldCase::say_band() const {
  return asked.high ? fmt::format("{} to {}", say_celsius(hold.low_c), say_celsius(hold.high_c))
                    : fmt::format("{} or above", say_celsius(hold.low_c));
}

void judge_hold(const WeldCase& weld, const Stage& stage, const HoldStage& asked, std::size_t index) {
  const HoldCase hold{weld, stage, asked, index, weld.holds[index]};
  add_course(hold);
  if (asked.time_min) judge_hold_time(hold);
  if (asked.time_max_s) judge_hold_time_max(hold);
  judge_departures(hold);
  if (asked.high) judge_over(hold);
  if (asked.spread_max) judge_spread(hold);
  if (asked.edge_fraction_min) judge_edge(hold);
  if (asked.tempering_min) judge_tempering(hold, RequirementKind::tempering_min, *asked.tempering_min);
  if (asked.tempering_max) judge_tempering(hold, RequirementKind::tempering_max, *asked.tempering_max);
}

}  // namespace soakwright
