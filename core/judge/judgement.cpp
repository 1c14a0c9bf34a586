// A record held against a procedure, in this order:
// 1. traces of the channels, spares taken over (measure/trace)
// 2. the limits of the whole record (judge_whole_record)
// 3. for each weld: its channels, its holds (measure/hold_choice), then each stage (judge_ramp, judge_hold,
// judge_keep)
// 4. the verdicts of the welds and of the record
#include "core/judge/judgement.h"

#include <algorithm>
#include <limits>

#include <fmt/format.h>

#include "core/judge/budget_tables.h"
#include "core/judge/hold_case.h"
#include "core/judge/sentences.h"
#include "core/judge/stage_judges.h"
#include "core/judge/weld_case.h"
#include "core/judge/would_need.h"

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
    note.extreme = change.step_k;
    note.text = fmt::format("{} took over from {} at {}", spare.name, main.name,
                            say_moment(record_case.record, change.at_s));
    note.text += change.step_k ? fmt::format(", reading {:+.1f} °C against it there", *change.step_k)
                               : std::string{"; how far apart they read there is not known"};
    record_case.out.findings.push_back(std::move(note));
  }
}

/// What an earlier record failed or left open does not show in this one's verdict: it is said.
void note_earlier(const RecordCase& record_case) {
  const auto adds_up = [&](const Requirement& requirement) {
    if (requirement.kind != RequirementKind::hold_time) return false;
    const Stage& stage = record_case.procedure.stages[requirement.stage - 1];
    return std::get<HoldStage>(stage.asked).count == HoldStage::Count::accumulated;
  };
  for (const EarlierCycle& earlier : record_case.earlier) {
    Verdict verdict = Verdict::met;
    for (const Requirement& requirement : earlier.requirements)
      if (!adds_up(requirement)) verdict = std::max(verdict, requirement.verdict);
    if (verdict == Verdict::met) continue;
    std::string which;
    for (const Requirement& requirement : earlier.requirements)
      if (requirement.verdict == verdict && !adds_up(requirement))
        which += (which.empty() ? "" : ", ") + requirement.id;
    Finding note;
    note.text = fmt::format(
        "cycle {}, judged by itself, is {}: {}. The verdict here is on cycle {}; only a hold that "
        "adds up counts the earlier ones",
        earlier.cycle, verdict == Verdict::not_met ? "not met" : "undecided", which, record_case.cycle);
    record_case.out.findings.push_back(std::move(note));
  }
}

/// The weld's traces that count for it: judged ones, or those at the edge of the heated band.
std::vector<std::size_t> traces_for(const RecordCase& record_case, const std::optional<std::string>& weld,
                                    Zone zone) {
  std::vector<std::size_t> traces;
  for (std::size_t i = 0; i < record_case.set.traces.size(); ++i) {
    const Channel& channel = record_case.record.channels[record_case.set.traces[i].channel];
    const bool counts = channel.duty == Duty::control || channel.duty == Duty::monitor;
    const bool here = !weld || !channel.weld || *channel.weld == *weld;
    if (counts && channel.zone == zone && here) traces.push_back(i);
  }
  return traces;
}

std::vector<HoldCourse> holds_of(const WeldCase& weld, BandEdge edge) {
  std::vector<HoldCourse> holds;
  for (std::size_t i = 0; i < weld.procedure.stages.size(); ++i) {
    const auto* asked = std::get_if<HoldStage>(&weld.procedure.stages[i].asked);
    if (asked == nullptr) continue;
    HoldCourse hold;
    hold.stage = i;
    hold.low_c = asked->low.celsius();
    hold.high_c = asked->high ? asked->high->celsius() : std::numeric_limits<double>::infinity();
    const auto same = std::find_if(holds.begin(), holds.end(), [&](const HoldCourse& other) {
      return other.low_c == hold.low_c && other.high_c == hold.high_c;
    });
    hold.band = same != holds.end() ? same->band
                                    : group_in_band(weld.set, weld.group, weld.time(),
                                                    weld.bands({hold.low_c, hold.high_c}, edge),
                                                    weld.procedure.judging.grace);
    holds.push_back(std::move(hold));
  }
  choose_holds(holds, weld.procedure, weld.record, weld.set, weld.group);
  return holds;
}

void judge_stages(const WeldCase& weld) {
  std::size_t hold = 0;
  for (const Stage& stage : weld.procedure.stages) {
    if (const auto* ramp = std::get_if<RampStage>(&stage.asked)) judge_ramp(weld, stage, *ramp);
    if (const auto* asked = std::get_if<HoldStage>(&stage.asked)) judge_hold(weld, stage, *asked, hold++);
    if (const auto* keep = std::get_if<KeepStage>(&stage.asked)) judge_keep(weld, stage, *keep);
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

std::shared_ptr<const Groundwork> groundwork_for(const Record& record, const Procedure& procedure,
                                                 const std::shared_ptr<const Groundwork>& before) {
  const double bridge_s = bridge_for(procedure, record.interval_s);
  return before && before->bridge_s == bridge_s ? before : lay_groundwork(record, bridge_s);
}

Verdicts judge(const Record& record, const Procedure& procedure, const Job* job) {
  return judge(record, procedure, job, *groundwork_for(record, procedure, nullptr));
}

Verdicts judge(const Record& record, const Procedure& procedure, const Job* job, const Groundwork& ground,
               std::span<const EarlierCycle> earlier) {
  Verdicts out;
  std::optional<Guard> guard;
  if (procedure.judging.decision == Decision::guarded && job != nullptr) {
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
                               earlier,
                               job ? cycle_of(*job) : 1};
  note_take_overs(record_case);
  note_earlier(record_case);
  judge_whole_record(record_case, traces_for(record_case, std::nullopt, Zone::soak));

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
    weld.holds = holds_of(weld, BandEdge::as_asked);
    if (guard) {
      weld.sure_holds = holds_of(weld, BandEdge::narrowed);
      weld.possible_holds = holds_of(weld, BandEdge::widened);
    }
    weld.holds_by_grace = holds_under_graces(weld);
    // One weld alone answers for the whole record as well.
    const std::size_t first = listed ? out.requirements.size() : 0;
    judge_stages(weld);
    WeldVerdict verdict;
    verdict.number = weld.weld;
    if (weld.thickness) verdict.thickness_mm = weld.thickness->millimetres();
    verdict.verdict = worst_from(out.requirements, first);
    out.welds.push_back(std::move(verdict));
  }
  for (Requirement& requirement : out.requirements)
    requirement.would_need = would_need(record, procedure, requirement);
  out.verdict = worst_from(out.requirements, 0);
  return out;
}

}  // namespace soakwright
