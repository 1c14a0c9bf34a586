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

std::string say_excursions(const HoldCase& hold, const Requirement& requirement) {
  if (requirement.excursions.count == 0)
    return hold.weld.procedure.evaluation.excursion_allowed.time_s > 0.0 ? "; no excursion is counted in"
                                                                         : "";
  return fmt::format("; {} {} allowed, {} in all, {} counted in", requirement.excursions.count,
                     requirement.excursions.count == 1 ? "excursion" : "excursions",
                     say_time(requirement.excursions.seconds),
                     requirement.excursions.count == 1 ? "is" : "are");
}

/// Every in-range time of an accumulated hold: "10:00:00 to 10:40:00, 11:05:00 to 11:30:00".
std::string say_all_times(const WeldCase& weld, const HoldCourse& sure) {
  std::string text;
  for (const Span& time : sure.all_in_range())
    text += (text.empty() ? "" : ", ") + say_span(weld.record, time.first, time.second);
  return text;
}

std::string say_hold_time(const HoldCase& hold, const HoldCourse& sure, const Requirement& requirement,
                          const CycleShare& time) {
  const WeldCase& weld = hold.weld;
  const std::string within =
      weld.guard == nullptr ? hold.say_range() : hold.say_range() + ", each edge narrowed by U,";
  std::string text;
  if (!requirement.cycles.empty())
    text = fmt::format("all thermocouples within {} for {} added up over {} records ({})", within,
                       say_time(time.certain_s), requirement.cycles.size(), say_shares(requirement.cycles));
  else if (!sure.continuous)
    text = fmt::format("no hold was found: the thermocouples were never all within {} together", within);
  else if (hold.asked.count == HoldStage::Count::accumulated && sure.all_in_range().size() > 1)
    text = fmt::format("all thermocouples within {} for {} added up: {}", within, say_time(time.certain_s),
                       say_all_times(weld, sure));
  else
    text = fmt::format("all thermocouples within {} for {}, from {}", within, say_time(time.certain_s),
                       say_span(weld.record, sure.continuous->first, sure.continuous->second));
  text += fmt::format("; at least {}", say_time(requirement.limit)) + say_excursions(hold, requirement);
  if (requirement.verdict != Verdict::inconclusive) return text;
  if (!beyond_limit(requirement, time.certain_s))
    return text + fmt::format("; they are more than a tenth of it, and without them it is {}",
                              say_time(time.without_excursions_s));
  if (time.possible_s)
    return text + fmt::format("; with {} it could be {}",
                              weld.guard == nullptr ? "the time that is not known" : "each edge widened by U",
                              say_time(*time.possible_s));
  return text + (requirement.cycles.empty() ? "; the record starts" : "; one of the records starts") +
         " or ends within the hold, so it may have been longer";
}

/// The excursions counted in may be no more than this share of a hold time that is not met without them.
constexpr double kExcursionsShare = 0.1;

/// Certain and possible time of this record; guarded, in the narrowed and in the widened range.
CycleShare time_here(const HoldCase& hold, const std::vector<HoldCourse>& sure_holds) {
  const WeldCase& weld = hold.weld;
  const HoldTime time = hold_time(sure_holds, hold.index, hold.asked.count, weld.time());
  CycleShare share{
      weld.cycle, time.certain_s, time.possible_s, {time.filled.count, time.filled.seconds}, time.certain_s};
  if (weld.guard != nullptr)
    share.possible_s = hold_time(weld.possible_holds, hold.index, hold.asked.count, weld.time()).possible_s;
  if (time.filled.count > 0) {
    const std::vector<HoldCourse> without =
        with_excursion_allowed(weld, sure_holds, RangeEdge::narrowed, ExcursionAllowed{});
    share.without_excursions_s = hold_time(without, hold.index, hold.asked.count, weld.time()).certain_s;
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
    const double out_s = excursion.time.second - excursion.time.first;
    finding.text = fmt::format("out of {} {}: {} at {}{}", hold.say_range(),
                               out_s > 0.0 ? "for " + say_time(out_s) : std::string{"at a single reading"},
                               *finding.channel, say_celsius(depth.celsius),
                               excursion.filled ? "; within the excursion allowed" : "");
    weld.out.findings.push_back(std::move(finding));
  }
}

/// Time out of the range within the hold period: at least and at most. Guarded, each in the hold period of
/// its own range, chosen anew; nothing where that has none.
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
  Requirement requirement =
      hold.start(RequirementKind::hold_time, limit_at(*hold.asked.time_min, weld.thickness).value_or(0.0));
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
  requirement.text = say_hold_time(hold, sure, requirement, time);
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
  Requirement requirement = hold.start(RequirementKind::hold_time_max, *hold.asked.time_max_s);
  requirement.channel_times = channel_times(hold);
  const std::vector<ChannelTime> times = added_up_by_channel(hold, requirement.channel_times);
  if (times.empty()) {
    requirement.text = "no thermocouple is evaluated";
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
  requirement.text =
      fmt::format("{} was at or above {} for {}{}; at most {}", *requirement.channel,
                  say_celsius(hold.hold.low_c), say_time(longest->measured_s),
                  adds_up(hold) ? " in all records together" : "", say_time(requirement.limit));
  if (weld.guard != nullptr) {
    requirement.certain_s = longest->certain_s;
    requirement.possible_s = longest->possible_s;
    if (longest->possible_s)
      set_measured(requirement, longest->measured_s, *longest->possible_s - longest->measured_s);
    requirement.text +=
        fmt::format("; with U at {}, {} to {}", say_celsius(hold.hold.low_c), say_time(longest->certain_s),
                    longest->possible_s ? say_time(*longest->possible_s) : std::string{"an unknown time"});
  }
  if (requirement.verdict == Verdict::inconclusive)
    requirement.text += "; time that the records do not show could make it longer";
  hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

void evaluate_excursions(const HoldCase& hold) {
  const bool asked = hold.asked.excursion_time_max_s.has_value();
  Requirement requirement =
      hold.start(RequirementKind::excursion_time, hold.asked.excursion_time_max_s.value_or(0.0));
  if (!asked) {
    if (hold.hold.period) add_excursions(hold, requirement, Finding::Kind::note);
    return;
  }
  const TimeOutBounds bounds = time_out_bounds(hold);
  const bool too_long = bounds.at_least_s && beyond_limit(requirement, *bounds.at_least_s);
  const bool within = bounds.at_most_s && hold.hold.period &&
                      !beyond_limit(requirement, *bounds.at_most_s + bounds.unknown_s);
  requirement.verdict = too_long ? Verdict::not_met : within ? Verdict::met : Verdict::inconclusive;
  if (!hold.hold.period) {
    requirement.text = "no hold was found, so there is no hold period in which to look for excursions";
    hold.add_own_finding(requirement);
    return hold.finish(std::move(requirement));
  }
  const double out_s = time_out(hold.hold.range, *hold.hold.period).out_s;
  set_measured(requirement, out_s);
  requirement.from_s = hold.hold.period->first;
  requirement.to_s = hold.hold.period->second;
  requirement.text = fmt::format("out of {} for {} within the hold period; at most {}", hold.say_range(),
                                 say_time(out_s), say_time(requirement.limit));
  add_excursions(hold, requirement, too_long ? Finding::Kind::not_met : Finding::Kind::note);
  if (hold.weld.guard != nullptr) {
    requirement.certain_s = bounds.at_least_s;
    requirement.possible_s = bounds.at_most_s;
    if (bounds.at_most_s) set_measured(requirement, out_s, std::max(0.0, *bounds.at_most_s - out_s));
    requirement.text +=
        bounds.at_most_s ? fmt::format("; with U at the edges {} to {}",
                                       say_time(bounds.at_least_s.value_or(0.0)), say_time(*bounds.at_most_s))
                         : std::string{"; with the range narrowed by U no hold is certain"};
  }
  if (requirement.verdict == Verdict::inconclusive) {
    if (bounds.unknown_s > 0.0)
      requirement.text += fmt::format("; {} within it are not known", say_time(bounds.unknown_s));
    hold.add_own_finding(requirement);
  }
  hold.finish(std::move(requirement));
}

}  // namespace soakwright
