// How long a hold lasted: time held, longest time, excursions.
//
// Guarded, what is certain is measured with the range narrowed by each channel's U at its edges, and what is
// possible with it widened.
#include <algorithm>

#include <fmt/format.h>

#include "core/evaluate/cycle_shares.h"
#include "core/evaluate/hold_case.h"
#include "core/evaluate/sentences.h"
#include "core/measure/extremes.h"
#include "core/measure/hold_time.h"

namespace soakwright {
namespace {

std::string say_hold_time(const HoldCase& hold, const HoldCourse& sure, const Requirement& requirement,
                          const HoldTime& time) {
  const WeldCase& weld = hold.weld;
  const std::string within =
      weld.guard == nullptr ? hold.say_range() : hold.say_range() + ", each edge narrowed by U,";
  std::string text;
  if (!requirement.cycles.empty())
    text = fmt::format("all thermocouples within {} for {} added up over {} records ({})", within,
                       say_time(time.certain_s), requirement.cycles.size(), say_shares(requirement.cycles));
  else if (!sure.continuous)
    text = fmt::format("the thermocouples were never all within {} together", within);
  else
    text =
        fmt::format("all thermocouples within {} for {}{} {}", within, say_time(time.certain_s),
                    hold.asked.count == HoldStage::Count::accumulated ? " added up, longest from" : ", from",
                    say_span(weld.record, sure.continuous->first, sure.continuous->second));
  text += fmt::format("; at least {}", say_time(requirement.limit));
  if (requirement.verdict != Verdict::inconclusive) return text;
  if (time.possible_s)
    return text + fmt::format("; with {} it could be {}",
                              weld.guard == nullptr ? "the time that is not known" : "each edge widened by U",
                              say_time(*time.possible_s));
  return text + (requirement.cycles.empty() ? "; the record starts" : "; one of the records starts") +
         " or ends within the hold, so how long it really was is not shown";
}

/// With no core: each channel that never came in, with the reading nearest to the range.
void add_never_in(const HoldCase& hold, const HoldCourse& sure, const std::vector<HoldCourse>& holds,
                  const Requirement& requirement) {
  const WeldCase& weld = hold.weld;
  const HoldCourse* before = hold_before(holds, hold.index);
  const HoldCourse* after = hold_after(holds, hold.index);
  const Span around{before != nullptr ? before->continuous->second : weld.time().first,
                    after != nullptr ? after->continuous->first : weld.time().second};
  const Finding::Kind kind =
      requirement.verdict == Verdict::not_met ? Finding::Kind::not_met : Finding::Kind::inconclusive;
  bool any = false;
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    if (in_and_out(sure.range.channels[member], around).in_s) continue;
    const std::size_t only[] = {weld.group[member]};
    const auto highest = highest_reading(weld.set, only, around);
    const auto lowest = lowest_reading(weld.set, only, around);
    Finding finding = finding_on(requirement, kind);
    finding.channel = weld.name(weld.group[member]);
    if (!highest) {
      finding.text = fmt::format("{} has no reading there", *finding.channel);
    } else {
      const bool too_cold =
          weld.guard == nullptr ? highest->celsius < hold.hold.low_c : lowest->celsius <= hold.hold.high_c;
      const ReadingAt& extreme = too_cold ? *highest : *lowest;
      finding.from_s = finding.to_s = extreme.at_s;
      finding.extreme = extreme.celsius;
      finding.text =
          fmt::format("{} never came into {}{}: {} {} at {}", *finding.channel, hold.say_range(),
                      weld.guard == nullptr ? "" : ", narrowed by U", too_cold ? "highest" : "lowest",
                      say_celsius(extreme.celsius), say_moment(weld.record, extreme.at_s));
    }
    weld.out.findings.push_back(std::move(finding));
    any = true;
  }
  if (!any) hold.add_own_finding(requirement);
}

/// Whether the record breaks off where the group is in the range or unknown.
bool open_at_an_end(const HoldCase& hold, const Span& within) {
  const std::vector<GroupSpan>& spans = hold.hold.range.spans;
  if (spans.empty()) return false;
  const Span time = hold.weld.time();
  const bool start = within.first <= time.first && spans.front().state != GroupState::out;
  const bool end = within.second >= time.second && spans.back().state != GroupState::out;
  return start || end;
}

/// Excursions of a range within a span, as findings.
void add_excursions(const HoldCase& hold, const Requirement& requirement, Finding::Kind kind) {
  const WeldCase& weld = hold.weld;
  for (const Excursion& excursion : hold.hold.range.excursions) {
    if (excursion.time.first < hold.hold.period->first || excursion.time.second > hold.hold.period->second)
      continue;
    const Depth depth = depth_of(weld.set, weld.group, excursion.time, hold.hold.low_c, hold.hold.high_c);
    Finding finding = finding_on(requirement, kind);
    finding.channel = weld.name(depth.trace);
    finding.from_s = excursion.time.first;
    finding.to_s = excursion.time.second;
    finding.extreme = depth.celsius;
    finding.text =
        fmt::format("out of {} for {}: {} at {}{}", hold.say_range(),
                    say_time(excursion.time.second - excursion.time.first), *finding.channel,
                    say_celsius(depth.celsius), excursion.filled ? "; within the excursion_allowed" : "");
    weld.out.findings.push_back(std::move(finding));
  }
}

/// Time out of the range within the hold: at least and at most. Simple, both are the same but for unknown
/// time.
struct Departed {
  double at_least_s = 0.0;
  std::optional<double> at_most_s;  ///< nothing where no hold is certain
  double unknown_s = 0.0;
};

Departed departed(const HoldCase& hold) {
  const TimeOut total = time_out(hold.hold.range, *hold.hold.period);
  if (hold.weld.guard == nullptr) return {total.out_s, total.out_s, total.unknown_s};
  // Out of the widened range is out for certain; between the edges of the narrowed range's own hold all that
  // is not within it may be.
  const HoldCourse& sure = hold.weld.sure_holds[hold.index];
  Departed time{time_out(hold.weld.possible_holds[hold.index].range, *hold.hold.period).out_s, std::nullopt,
                total.unknown_s};
  if (sure.period) time.at_most_s = std::max(total.out_s, time_out(sure.range, *sure.period).out_s);
  return time;
}

}  // namespace

void evaluate_hold_time(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  const bool guarded = weld.guard != nullptr;
  const std::vector<HoldCourse>& sure_holds = guarded ? weld.sure_holds : weld.holds;
  const HoldCourse& sure = sure_holds[hold.index];
  Requirement requirement =
      hold.start(RequirementKind::hold_time, limit_at(*hold.asked.time_min, weld.thickness).value_or(0.0));
  HoldTime time = hold_time(sure_holds, hold.index, hold.asked.count, weld.time());
  if (guarded)
    time.possible_s = hold_time(weld.possible_holds, hold.index, hold.asked.count, weld.time()).possible_s;
  requirement.cycles = cycle_shares(hold, time);
  if (!requirement.cycles.empty()) time = added_up(requirement.cycles);
  set_measured(requirement, time.certain_s);
  requirement.certain_s = time.certain_s;
  requirement.possible_s = time.possible_s;
  if (sure.continuous) {
    requirement.from_s = sure.continuous->first;
    requirement.to_s = sure.continuous->second;
  }
  const bool enough = !beyond_limit(requirement, time.certain_s);
  const bool could_be = !time.possible_s || !beyond_limit(requirement, *time.possible_s);
  requirement.verdict = enough ? Verdict::met : could_be ? Verdict::inconclusive : Verdict::not_met;
  requirement.text = say_hold_time(hold, sure, requirement, time);
  requirement.alternatives.holds = hold_alternatives(hold);
  requirement.alternatives.thermocouples = ins_and_outs(hold);
  if (requirement.verdict != Verdict::met && !sure.continuous && requirement.cycles.empty())
    add_never_in(hold, sure, sure_holds, requirement);
  else
    hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

void evaluate_hold_time_max(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  Requirement requirement = hold.start(RequirementKind::hold_time_max, *hold.asked.time_max_s);
  const Span around = between_spans(weld.holds, hold.index, weld.time());
  const TimeAbove above = time_at_or_above(weld.set, weld.group, hold.hold.low_c, around);
  if (above.trace) {
    TimeAbove sure = above;
    TimeAbove possible = above;
    set_measured(requirement, above.longest_s);
    requirement.channel = weld.name(*above.trace);
    if (weld.guard != nullptr) {
      sure = time_at_or_above(weld.set, weld.group, weld.ranges(hold.range(), RangeEdge::narrowed), around);
      possible =
          time_at_or_above(weld.set, weld.group, weld.ranges(hold.range(), RangeEdge::widened), around);
      requirement.channel = weld.name(possible.trace.value_or(*above.trace));
      requirement.certain_s = sure.longest_s;
      requirement.possible_s = possible.longest_s;
      set_measured(requirement, above.longest_s, possible.longest_s - above.longest_s);
    }
    requirement.text =
        fmt::format("{} was at or above {} for {}; at most {}", *requirement.channel,
                    say_celsius(hold.hold.low_c), say_time(above.longest_s), say_time(requirement.limit));
    if (weld.guard != nullptr)
      requirement.text += fmt::format("; with U at {}, {} to {}", say_celsius(hold.hold.low_c),
                                      say_time(sure.longest_s), say_time(possible.longest_s));
    if (beyond_limit(requirement, sure.longest_s)) {
      requirement.verdict = Verdict::not_met;
    } else if (beyond_limit(requirement, possible.longest_with_unknown_s) || open_at_an_end(hold, around)) {
      requirement.verdict = Verdict::inconclusive;
      if (!beyond_limit(requirement, possible.longest_s))
        requirement.text += "; time that the record does not show could make it longer";
    } else {
      requirement.verdict = Verdict::met;
    }
  }
  hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

void evaluate_excursions(const HoldCase& hold) {
  const bool asked = hold.asked.excursion_time_max_s.has_value();
  Requirement requirement =
      hold.start(RequirementKind::excursion_time, hold.asked.excursion_time_max_s.value_or(0.0));
  if (!hold.hold.period) {
    if (!asked) return;
    requirement.text = "no hold was found, so nothing can be said of excursions within it";
    hold.add_own_finding(requirement);
    return hold.finish(std::move(requirement));
  }
  const double out_s = time_out(hold.hold.range, *hold.hold.period).out_s;
  const Departed time = departed(hold);
  set_measured(requirement, out_s);
  if (hold.weld.guard != nullptr) {
    requirement.certain_s = time.at_least_s;
    requirement.possible_s = time.at_most_s;
    if (time.at_most_s) set_measured(requirement, out_s, *time.at_most_s - out_s);
  }
  requirement.from_s = hold.hold.period->first;
  requirement.to_s = hold.hold.period->second;
  const bool too_long = beyond_limit(requirement, time.at_least_s);
  requirement.verdict = too_long ? Verdict::not_met
                        : !time.at_most_s || beyond_limit(requirement, *time.at_most_s + time.unknown_s)
                            ? Verdict::inconclusive
                            : Verdict::met;
  requirement.text = fmt::format("out of {} for {} within the hold; at most {}", hold.say_range(),
                                 say_time(out_s), say_time(requirement.limit));
  add_excursions(hold, requirement, !asked || !too_long ? Finding::Kind::note : Finding::Kind::not_met);
  if (!asked) return;
  if (hold.weld.guard != nullptr)
    requirement.text += time.at_most_s ? fmt::format("; with U at the edges {} to {}",
                                                     say_time(time.at_least_s), say_time(*time.at_most_s))
                                       : std::string{"; with the range narrowed by U no hold is certain"};
  if (requirement.verdict == Verdict::inconclusive) {
    if (hold.weld.guard == nullptr || time.unknown_s > 0.0)
      requirement.text += fmt::format("; {} within it are not known", say_time(time.unknown_s));
    hold.add_own_finding(requirement);
  }
  hold.finish(std::move(requirement));
}

}  // namespace soakwright
