// SPDX-License-Identifier: GPL-3.0-or-later
// A record held against a procedure, in this order:
// 1. traces of the channels, spares taken over (measure/trace)
// 2. the limits of the whole record (evaluate_record_limits)
// 3. for each weld: its channels, its holds (measure/hold_choice), its thermocouples, then each stage
// (evaluate_ramp, evaluate_hold, evaluate_maintain), and its tempering
// 4. the verdicts of the welds and of the record
#include "core/evaluate/evaluation.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "core/evaluate/budget_tables.h"
#include "core/evaluate/evaluate_heat.h"
#include "core/evaluate/stages/hold_case.h"
#include "core/evaluate/stages/stage_evaluations.h"
#include "core/evaluate/weld_case.h"
#include "core/measure/tempering.h"

namespace soakwright {
namespace {

void note_take_overs(const RecordCase& record_case) {
  for (const TakeOver& change : record_case.set.take_overs) {
    const Channel& main = record_case.record.channels[change.channel];
    const Channel& spare = record_case.record.channels[change.spare];
    record_case.out.replaced.push_back({main.name, spare.name, change.at_s, change.step_k});
    Finding note;
    note.channel = main.name;
    note.from_s = note.to_s = change.at_s;
    if (change.step_k) note.extreme = TemperatureDifference::of_kelvin(*change.step_k);
    note.what = {change.step_k
                     ? state(Sentence::took_over, spare.name, main.name, AtMoment{change.at_s},
                             TemperatureDifference::of_kelvin(*change.step_k))
                     : state(Sentence::took_over_unseen, spare.name, main.name, AtMoment{change.at_s})};
    record_case.out.findings.push_back(std::move(note));
  }
}

/// What a previous record failed or left open does not show in this one's verdict: a note says it.
void note_previous_records(const RecordCase& record_case) {
  const auto adds_up = [&](const Requirement& requirement) {
    if (requirement.kind == RequirementKind::tempering_min ||
        requirement.kind == RequirementKind::tempering_max)
      return true;
    if (requirement.kind != RequirementKind::hold_time && requirement.kind != RequirementKind::hold_time_max)
      return false;
    const Stage& stage = record_case.procedure.stages[requirement.stage - 1];
    return std::get<HoldStage>(stage.specified).count == HoldStage::Count::accumulated;
  };
  for (const PreviousCycle& previous : record_case.previous_records) {
    Verdict verdict = Verdict::met;
    for (const Requirement& requirement : previous.requirements)
      if (!adds_up(requirement)) verdict = std::max(verdict, requirement.verdict);
    if (verdict == Verdict::met) continue;
    std::vector<std::string> which;
    for (const Requirement& requirement : previous.requirements)
      if (requirement.verdict == verdict && !adds_up(requirement)) which.push_back(requirement.id);
    const bool same_cycle = previous.cycle == record_case.cycle;
    Finding note;
    const bool failed = verdict == Verdict::not_met;
    const auto number = [](int cycle) { return Count::of(cycle); };
    if (same_cycle)
      note.what = {state(failed ? Sentence::previous_part_not_met : Sentence::previous_part_inconclusive,
                         number(previous.cycle), std::move(which))};
    else
      note.what = {state(failed ? Sentence::previous_cycle_not_met : Sentence::previous_cycle_inconclusive,
                         number(previous.cycle), std::move(which), number(record_case.cycle))};
    record_case.out.findings.push_back(std::move(note));
  }
}

/// Each evaluated channel's tempering over the whole record, at the reference temperature.
void add_tempering(const WeldCase& weld) {
  const std::optional<double> low_c = weld.out.heat.reference_c;
  const double constant = weld.out.heat.constant;
  for (const std::size_t index : weld.group) {
    ChannelTempering one{weld.weld, weld.name(index), {}, low_c, {}};
    if (const auto& tempering = weld.ground.temperings[index]) one.parameter = tempering->parameter;
    if (one.parameter && low_c) one.hours = equivalent_hours(*one.parameter, *low_c, constant);
    weld.out.tempering.push_back(std::move(one));
  }
}

/// The weld's traces that count for it: evaluated ones, or those at the edge of the heated band.
std::vector<std::size_t> traces_for(const RecordCase& record_case, const std::optional<std::string>& weld,
                                    Zone zone) {
  std::vector<std::size_t> traces;
  for (std::size_t i = 0; i < record_case.set.traces.size(); ++i) {
    const Channel& channel = record_case.record.channels[record_case.set.traces[i].channel];
    const bool counts =
        channel.role == ThermocoupleRole::control || channel.role == ThermocoupleRole::monitor;
    const bool here = !weld || !channel.weld || *channel.weld == *weld;
    if (counts && channel.zone == zone && here) traces.push_back(i);
  }
  return traces;
}

std::vector<HoldCourse> holds_of(const WeldCase& weld, RangeEdge edge) {
  std::vector<HoldCourse> holds;
  for (std::size_t i = 0; i < weld.procedure.stages.size(); ++i) {
    const auto* specified = std::get_if<HoldStage>(&weld.procedure.stages[i].specified);
    if (specified == nullptr) continue;
    HoldCourse hold;
    hold.stage = i;
    hold.low_c = specified->low.celsius();
    hold.high_c = specified->high ? specified->high->celsius() : std::numeric_limits<double>::infinity();
    const auto same = std::find_if(holds.begin(), holds.end(), [&](const HoldCourse& other) {
      return other.low_c == hold.low_c && other.high_c == hold.high_c;
    });
    hold.range = same != holds.end() ? same->range
                                     : group_in_range(weld.set, weld.group, weld.time(),
                                                      weld.ranges({hold.low_c, hold.high_c}, edge),
                                                      weld.procedure.evaluation.excursion_allowed);
    holds.push_back(std::move(hold));
  }
  choose_holds(holds, weld.procedure, weld.record, weld.set, weld.group);
  return holds;
}

void evaluate_stages(const WeldCase& weld) {
  std::size_t hold = 0;
  for (const Stage& stage : weld.procedure.stages) {
    if (const auto* ramp = std::get_if<RampStage>(&stage.specified)) evaluate_ramp(weld, stage, *ramp);
    if (const auto* specified = std::get_if<HoldStage>(&stage.specified))
      evaluate_hold(weld, stage, *specified, hold++);
    if (const auto* maintain = std::get_if<MaintainStage>(&stage.specified))
      evaluate_maintain(weld, stage, *maintain);
  }
}

Verdict worst_from(const std::vector<Requirement>& requirements, std::size_t first) {
  Verdict worst = Verdict::met;
  for (std::size_t i = first; i < requirements.size(); ++i) worst = std::max(worst, requirements[i].verdict);
  return worst;
}

/// The welds of the job; without a list the job's one weld, with the procedure's thickness.
std::vector<WeldEntry> welds_of(const Job* job) {
  if (job != nullptr && !job->welds.empty()) return job->welds;
  return {WeldEntry{}};
}

}  // namespace

std::shared_ptr<const PreparedTraces> prepared_traces_for(const Record& record, const Procedure& procedure,
                                                          const std::shared_ptr<const PreparedTraces>& before,
                                                          std::vector<UnmeasuredTime> unmeasured) {
  const double interpolate_max_s = interpolate_max_for(procedure, record.interval_s);
  const double constant = procedure.evaluation.tempering_constant;
  if (before && before->interpolate_max_s == interpolate_max_s && before->unmeasured == unmeasured &&
      before->tempering_constant == constant)
    return before;
  return prepare_traces(record, interpolate_max_s, std::move(unmeasured), constant);
}

Verdicts evaluate(const Record& record, const Procedure& procedure, const Job* job) {
  return evaluate(record, procedure, job, *prepared_traces_for(record, procedure, nullptr));
}

Verdicts evaluate(const Record& record, const Procedure& procedure, const Job* job,
                  const PreparedTraces& ground, std::span<const PreviousCycle> previous_records) {
  Verdicts out;
  std::optional<Guard> guard;
  if (procedure.evaluation.decision == Decision::guarded && job != nullptr) {
    guard.emplace(budgets_of(record, *job));
    out.budgets = budget_tables(record, procedure, *guard);
  }
  const RecordCase record_case{record,
                               procedure,
                               job,
                               ground,
                               ground.set,
                               out,
                               guard ? &*guard : nullptr,
                               previous_records,
                               job ? cycle_of(*job) : 1};
  start_heat(record_case);
  note_take_overs(record_case);
  note_previous_records(record_case);
  evaluate_record_limits(record_case, traces_for(record_case, std::nullopt, Zone::soak));

  const bool listed = job != nullptr && !job->welds.empty();
  for (const WeldEntry& entry : welds_of(job)) {
    WeldCase weld{record_case, {}, {}, {}, {}, {}, {}, {}, {}};
    if (listed)
      weld.weld = entry.number;
    else if (job != nullptr)
      weld.weld = job->weld;
    weld.thickness = entry.thickness ? entry.thickness : procedure.thickness;
    weld.group = traces_for(record_case, listed ? weld.weld : std::nullopt, Zone::soak);
    weld.edge = traces_for(record_case, listed ? weld.weld : std::nullopt, Zone::edge);
    weld.holds = holds_of(weld, RangeEdge::as_asked);
    if (guard) {
      weld.sure_holds = holds_of(weld, RangeEdge::narrowed);
      weld.possible_holds = holds_of(weld, RangeEdge::widened);
    }
    weld.holds_by_excursion_allowed = holds_by_excursion_allowed(weld);
    // One weld alone answers for the whole record as well.
    const std::size_t first = listed ? out.requirements.size() : 0;
    if (procedure.record_limits.thermocouples_min) evaluate_thermocouples(weld);
    evaluate_stages(weld);
    add_tempering(weld);
    add_heat(weld);
    WeldVerdict verdict;
    verdict.number = weld.weld;
    if (weld.thickness) verdict.thickness_mm = weld.thickness->millimetres();
    verdict.verdict = worst_from(out.requirements, first);
    out.welds.push_back(std::move(verdict));
  }
  out.verdict = worst_from(out.requirements, 0);
  return out;
}

}  // namespace soakwright
