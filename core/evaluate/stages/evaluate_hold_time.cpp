// SPDX-License-Identifier: GPL-3.0-or-later
// How long a hold lasted: time held, longest time, excursions.
//
// Guarded, what is certain is measured with the range narrowed by each channel's U at its edges, and what is
// possible with it widened.
#include <algorithm>

#include "core/evaluate/cycle_shares.h"
#include "core/evaluate/stages/hold_case.h"
#include "core/measure/extremes.h"
#include "core/measure/holds/hold_time.h"

namespace soakwright {
namespace {

/// What the figures of a hold time do not say.
void remark_hold_time(const HoldCase& hold, const HoldCourse& sure, Requirement& requirement,
                      const CycleShare& time) {
  const WeldCase& weld = hold.weld;
  Statements& remarks = requirement.remarks;
  if (requirement.cycles.empty() && hold.specified.count == HoldStage::Count::accumulated) {
    std::vector<FromTo> times;
    for (const Span& one : sure.all_in_range()) times.push_back({one.first, one.second});
    if (times.size() > 1) remarks.push_back(state(Sentence::times_in_range, std::move(times)));
  }
  remark_shares(requirement.cycles, remarks);
  if (weld.guard != nullptr) remarks.push_back(state(Sentence::range_narrowed));
  if (requirement.excursions.count > 0)
    remarks.push_back(state(Sentence::excursions_counted,
                            Count::of(static_cast<std::int64_t>(requirement.excursions.count)),
                            Duration::of_seconds(requirement.excursions.seconds)));
  else if (weld.procedure.evaluation.excursion_allowed.time_s > 0.0)
    remarks.push_back(state(Sentence::no_excursion_counted));
  if (requirement.verdict != Verdict::inconclusive) return;
  if (!beyond_limit(requirement, time.certain_s))
    remarks.push_back(
        state(Sentence::excursions_over_a_tenth, Duration::of_seconds(time.without_excursions_s)));
  else if (time.possible_s)
    remarks.push_back(
        state(weld.guard == nullptr ? Sentence::possible_with_missing : Sentence::possible_with_u,
              Duration::of_seconds(*time.possible_s)));
  else
    remarks.push_back(
        state(requirement.cycles.empty() ? Sentence::hold_open : Sentence::hold_open_in_one_record));
}

/// The excursions counted in may be no more than this share of a hold time that is not met without them.
constexpr double kExcursionsShare = 0.1;

/// Certain and possible time of this record; guarded, in the narrowed and in the widened range.
CycleShare time_here(const HoldCase& hold, const std::vector<HoldCourse>& sure_holds) {
  const WeldCase& weld = hold.weld;
  const HoldTime time = hold_time(sure_holds, hold.index, hold.specified.count, weld.time());
  CycleShare share{
      weld.cycle, time.certain_s, time.possible_s, {time.filled.count, time.filled.seconds}, time.certain_s};
  if (weld.guard != nullptr)
    share.possible_s =
        hold_time(weld.possible_holds, hold.index, hold.specified.count, weld.time()).possible_s;
  if (time.filled.count > 0) {
    const std::vector<HoldCourse> without =
        with_excursion_allowed(weld, sure_holds, RangeEdge::narrowed, ExcursionAllowed{});
    share.without_excursions_s = hold_time(without, hold.index, hold.specified.count, weld.time()).certain_s;
  }
  return share;
}

std::vector<ChannelTime> channel_times(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  const Span around = between_spans(weld.holds, hold.index, weld.time());
  const auto measured = [&](RangeEdge edge) {
    return times_at_or_above(weld.set, weld.group, weld.ranges(hold.range(), edge), around, weld.time());
  };
  const std::vector<TimeAbove> as_asked = measured(RangeEdge::as_asked);
  const bool guarded = weld.guard != nullptr;
  const std::vector<TimeAbove> sure = guarded ? measured(RangeEdge::narrowed) : as_asked;
  const std::vector<TimeAbove> possible = guarded ? measured(RangeEdge::widened) : as_asked;
  std::vector<ChannelTime> all;
  for (std::size_t i = 0; i < as_asked.size(); ++i)
    all.push_back(
        {weld.name(as_asked[i].trace), as_asked[i].known_s, sure[i].known_s,
         possible[i].open ? std::nullopt : std::optional{possible[i].known_s + possible[i].unknown_s}});
  return all;
}

/// With no continuous hold: each channel that never came in, with the reading nearest to the range.
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
      finding.what = {state(Sentence::channel_without_reading, *finding.channel)};
    } else {
      const bool too_cold =
          weld.guard == nullptr ? highest->celsius < hold.hold.low_c : lowest->celsius <= hold.hold.high_c;
      const ReadingAt& extreme = too_cold ? *highest : *lowest;
      finding.from_s = finding.to_s = extreme.at_s;
      finding.extreme = Temperature::of_celsius(extreme.celsius);
      finding.what = {state(too_cold ? Sentence::never_hot_enough : Sentence::never_cool_enough,
                            *finding.channel, hold.specified_range(), *finding.extreme,
                            AtMoment{extreme.at_s})};
      if (weld.guard != nullptr) finding.what.push_back(state(Sentence::range_narrowed));
    }
    weld.out.findings.push_back(std::move(finding));
    any = true;
  }
  if (!any) hold.add_own_finding(requirement);
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
    finding.extreme = Temperature::of_celsius(depth.celsius);
    const double out_s = excursion.time.second - excursion.time.first;
    if (out_s > 0.0)
      finding.what = {state(Sentence::out_of_range, *finding.channel, hold.specified_range(),
                            Duration::of_seconds(out_s), *finding.extreme)};
    else
      finding.what = {
          state(Sentence::out_of_range_once, *finding.channel, hold.specified_range(), *finding.extreme)};
    if (excursion.filled) finding.what.push_back(state(Sentence::excursion_is_allowed));
    weld.out.findings.push_back(std::move(finding));
  }
}

/// Time out of the range within the hold period: at least and at most. Guarded, each in the hold period of
/// its own range, chosen anew; nullopt if that has none.
struct TimeOutBounds {
  std::optional<double> at_least_s, at_most_s;
  double unknown_s = 0.0;
};

TimeOutBounds time_out_bounds(const HoldCase& hold) {
  const auto out_in = [&](const HoldCourse& course) {
    return course.period ? std::optional{time_out(course.range, *course.period)} : std::nullopt;
  };
  const bool guarded = hold.weld.guard != nullptr;
  const auto least = out_in(guarded ? hold.weld.possible_holds[hold.index] : hold.hold);
  const auto most = out_in(guarded ? hold.weld.sure_holds[hold.index] : hold.hold);
  TimeOutBounds bounds;
  if (least) bounds.at_least_s = least->out_s;
  if (most) bounds.at_most_s = most->out_s;
  if (most) bounds.unknown_s = most->unknown_s;
  return bounds;
}

}  // namespace

Verdict hold_time_verdict(const CycleShare& time, double least_s) {
  const auto enough = [&](double seconds) { return seconds >= least_s - kSampleSlack_s; };
  if (!enough(time.certain_s))
    return !time.possible_s || enough(*time.possible_s) ? Verdict::inconclusive : Verdict::not_met;
  const bool many = time.excursions.seconds > kExcursionsShare * time.certain_s + kSampleSlack_s;
  return many && !enough(time.without_excursions_s) ? Verdict::inconclusive : Verdict::met;
}

void evaluate_hold_time(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  const std::vector<HoldCourse>& sure_holds = weld.guard != nullptr ? weld.sure_holds : weld.holds;
  const HoldCourse& sure = sure_holds[hold.index];
  Requirement requirement = hold.start(RequirementKind::hold_time,
                                       limit_at(*hold.specified.time_min, weld.thickness).value_or(0.0));
  CycleShare time = time_here(hold, sure_holds);
  requirement.cycles = cycle_shares(hold, time);
  if (!requirement.cycles.empty()) time = added_up(requirement.cycles);
  set_measured(requirement, time.certain_s);
  requirement.certain_s = time.certain_s;
  requirement.possible_s = time.possible_s;
  requirement.excursions = time.excursions;
  requirement.without_excursions_s = time.without_excursions_s;
  if (sure.continuous) {
    requirement.from_s = sure.continuous->first;
    requirement.to_s = sure.continuous->second;
    const auto name = [&](const std::optional<std::size_t>& member) {
      return member ? std::optional{weld.name(weld.group[*member])} : std::nullopt;
    };
    requirement.started_by = name(sure.continuous_by.begun_by);
    requirement.stopped_by = name(sure.continuous_by.ended_by);
  }
  requirement.verdict = hold_time_verdict(time, requirement.limit);
  remark_hold_time(hold, sure, requirement, time);
  requirement.alternatives.holds = hold_alternatives(hold, requirement.limit);
  requirement.alternatives.thermocouples = ins_and_outs(hold);
  if (requirement.verdict != Verdict::met && !sure.continuous)
    add_never_in(hold, sure, sure_holds, requirement);
  else
    hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

void evaluate_hold_time_max(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  Requirement requirement = hold.start(RequirementKind::hold_time_max, *hold.specified.time_max_s);
  requirement.channel_times = channel_times(hold);
  const std::vector<ChannelTime> times = added_up_by_channel(hold, requirement.channel_times);
  if (times.empty()) {
    requirement.remarks.push_back(state(Sentence::no_thermocouple));
    hold.add_own_finding(requirement);
    return hold.finish(std::move(requirement));
  }
  const ChannelTime* longest = &times.front();
  bool sure = false;
  bool open = false;
  for (const ChannelTime& one : times) {
    if (one.measured_s > longest->measured_s + kWindowSlack_s) longest = &one;
    sure = sure || beyond_limit(requirement, one.certain_s);
    open = open || !one.possible_s || beyond_limit(requirement, *one.possible_s);
  }
  requirement.verdict = sure ? Verdict::not_met : open ? Verdict::inconclusive : Verdict::met;
  requirement.channel = longest->channel;
  set_measured(requirement, longest->measured_s);
  if (adds_up(hold)) requirement.remarks.push_back(state(Sentence::all_records_together));
  if (weld.guard != nullptr) {
    requirement.certain_s = longest->certain_s;
    requirement.possible_s = longest->possible_s;
    if (longest->possible_s)
      set_measured(requirement, longest->measured_s, *longest->possible_s - longest->measured_s);
    if (longest->possible_s)
      requirement.remarks.push_back(state(Sentence::between_with_u, Duration::of_seconds(longest->certain_s),
                                          Duration::of_seconds(*longest->possible_s)));
    else
      requirement.remarks.push_back(
          state(Sentence::at_least_with_u, Duration::of_seconds(longest->certain_s)));
  }
  if (requirement.verdict == Verdict::inconclusive)
    requirement.remarks.push_back(state(Sentence::longer_unseen));
  hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

void evaluate_excursions(const HoldCase& hold) {
  const bool specified = hold.specified.excursion_time_max_s.has_value();
  Requirement requirement =
      hold.start(RequirementKind::excursion_time, hold.specified.excursion_time_max_s.value_or(0.0));
  if (!specified) {
    if (hold.hold.period) add_excursions(hold, requirement, Finding::Kind::note);
    return;
  }
  const TimeOutBounds bounds = time_out_bounds(hold);
  const bool too_long = bounds.at_least_s && beyond_limit(requirement, *bounds.at_least_s);
  const bool within = bounds.at_most_s && hold.hold.period &&
                      !beyond_limit(requirement, *bounds.at_most_s + bounds.unknown_s);
  requirement.verdict = too_long ? Verdict::not_met : within ? Verdict::met : Verdict::inconclusive;
  if (!hold.hold.period) {
    requirement.remarks.push_back(state(Sentence::excursions_without_hold));
    hold.add_own_finding(requirement);
    return hold.finish(std::move(requirement));
  }
  const double out_s = time_out(hold.hold.range, *hold.hold.period).out_s;
  set_measured(requirement, out_s);
  requirement.from_s = hold.hold.period->first;
  requirement.to_s = hold.hold.period->second;
  add_excursions(hold, requirement, too_long ? Finding::Kind::not_met : Finding::Kind::note);
  if (hold.weld.guard != nullptr) {
    requirement.certain_s = bounds.at_least_s;
    requirement.possible_s = bounds.at_most_s;
    if (bounds.at_most_s) set_measured(requirement, out_s, std::max(0.0, *bounds.at_most_s - out_s));
    if (bounds.at_most_s)
      requirement.remarks.push_back(state(Sentence::between_with_u,
                                          Duration::of_seconds(bounds.at_least_s.value_or(0.0)),
                                          Duration::of_seconds(*bounds.at_most_s)));
    else
      requirement.remarks.push_back(state(Sentence::no_hold_certain_with_u));
  }
  if (requirement.verdict == Verdict::inconclusive) {
    if (bounds.unknown_s > 0.0)
      requirement.remarks.push_back(state(Sentence::missing_in_hold, Duration::of_seconds(bounds.unknown_s)));
    hold.add_own_finding(requirement);
  }
  hold.finish(std::move(requirement));
}

}  // namespace soakwright
