// A hold: time held, longest time, departures, over, spread, edge, tempering.
#include <algorithm>

#include <fmt/format.h>

#include "core/judge/sentences.h"
#include "core/judge/stage_judges.h"
#include "core/measure/extremes.h"
#include "core/measure/hold_time.h"
#include "core/measure/tempering.h"

namespace soakwright {
namespace {

/// One hold of one weld, and what its requirements have in common.
class HoldJudge {
 public:
  HoldJudge(const WeldCase& weld, const Stage& stage, const HoldStage& asked, std::size_t index)
      : weld_(weld), stage_(stage), asked_(asked), index_(index), hold_(weld.holds[index]) {}

  void run() {
    add_course();
    if (asked_.time_min) judge_time();
    if (asked_.time_max_s) judge_time_max();
    judge_departures();
    if (asked_.high) judge_over();
    if (asked_.spread_max) judge_spread();
    if (asked_.edge_fraction_min) judge_edge();
    if (asked_.tempering_min) judge_tempering(RequirementKind::tempering_min, *asked_.tempering_min);
    if (asked_.tempering_max) judge_tempering(RequirementKind::tempering_max, *asked_.tempering_max);
  }

 private:
  Requirement start(RequirementKind kind, double limit) const {
    return requirement_for(kind, stage_.number, weld_.weld, limit);
  }

  void finish(Requirement requirement) { weld_.out.requirements.push_back(std::move(requirement)); }

  /// One finding with the requirement's own text, where it is not met or undecided.
  void add_own_finding(const Requirement& requirement) {
    if (requirement.verdict == Verdict::met) return;
    Finding finding =
        finding_on(requirement, requirement.verdict == Verdict::not_met ? Finding::Kind::not_met
                                                                        : Finding::Kind::undecided);
    finding.channel = requirement.channel;
    finding.from_s = requirement.from_s;
    finding.to_s = requirement.to_s;
    finding.extreme = requirement.measured;
    finding.text = requirement.text;
    weld_.out.findings.push_back(std::move(finding));
  }

  std::string say_band() const {
    return asked_.high ? fmt::format("{} to {}", say_celsius(hold_.low_c), say_celsius(hold_.high_c))
                       : fmt::format("{} or above", say_celsius(hold_.low_c));
  }

  void add_course() {
    StageCourse course;
    course.weld = weld_.weld;
    course.number = stage_.number;
    course.kind = "hold";
    course.core = hold_.core;
    course.stretches = hold_.stretches;
    course.set_aside = hold_.set_aside;
    if (hold_.span) {
      course.start_s = hold_.span->first;
      course.end_s = hold_.span->second;
    }
    const Span around = between_spans(weld_.holds, index_, weld_.time());
    for (std::size_t member = 0; member < weld_.group.size(); ++member) {
      const Trace& trace = weld_.set.traces[weld_.group[member]];
      StageChannel channel;
      channel.name = trace.name;
      const InAndOut times = in_and_out(hold_.band.channels[member], around);
      channel.in_s = times.in_s;
      channel.out_s = times.out_s;
      if (hold_.span) {
        if (const auto summary = summary_of(trace, {*hold_.span})) {
          channel.min_c = summary->min_c;
          channel.max_c = summary->max_c;
          channel.mean_c = summary->mean_c;
        }
      }
      if (const auto& tempering = weld_.ground.temperings[weld_.group[member]]) {
        channel.tempering = tempering->parameter;
        channel.tempering_hours = equivalent_hours(tempering->parameter, hold_.low_c);
      }
      course.channels.push_back(std::move(channel));
    }
    weld_.out.stages.push_back(std::move(course));
  }

  void judge_time() {
    Requirement requirement =
        start(RequirementKind::hold_time, limit_at(*asked_.time_min, weld_.thickness).value_or(0.0));
    const HoldTime time = hold_time(weld_.holds, index_, asked_.count, weld_.time());
    set_measured(requirement, time.certain_s);
    requirement.certain_s = time.certain_s;
    requirement.possible_s = time.possible_s;
    if (hold_.core) {
      requirement.from_s = hold_.core->first;
      requirement.to_s = hold_.core->second;
    }
    const bool enough = !beyond_limit(requirement, time.certain_s);
    const bool could_be = !time.possible_s || !beyond_limit(requirement, *time.possible_s);
    requirement.verdict = enough ? Verdict::met : could_be ? Verdict::undecided : Verdict::not_met;
    requirement.text = say_hold_time(requirement, time);
    if (requirement.verdict != Verdict::met && !hold_.core)
      add_never_in(requirement);
    else
      add_own_finding(requirement);
    finish(std::move(requirement));
  }

  std::string say_hold_time(const Requirement& requirement, const HoldTime& time) const {
    std::string text;
    if (!hold_.core) {
      text = fmt::format("the thermocouples were never all within {} together", say_band());
    } else if (asked_.count == HoldStage::Count::accumulated) {
      text = fmt::format("all thermocouples within {} for {} added up, longest from {}", say_band(),
                         say_time(time.certain_s),
                         say_span(weld_.record, hold_.core->first, hold_.core->second));
    } else {
      text = fmt::format("all thermocouples within {} for {}, from {}", say_band(), say_time(time.certain_s),
                         say_span(weld_.record, hold_.core->first, hold_.core->second));
    }
    text += fmt::format("; at least {}", say_time(requirement.limit));
    if (requirement.verdict != Verdict::undecided) return text;
    if (time.possible_s)
      return text +
             fmt::format("; with the time that is not known it could be {}", say_time(*time.possible_s));
    return text + "; the record starts or ends within the hold, so how long it really was is not shown";
  }

  /// With no core: each channel that never came in, with the reading nearest to the band.
  void add_never_in(const Requirement& requirement) {
    const HoldCourse* before = cored_before(weld_.holds, index_);
    const HoldCourse* after = cored_after(weld_.holds, index_);
    const Span around{before != nullptr ? before->core->second : weld_.time().first,
                      after != nullptr ? after->core->first : weld_.time().second};
    const Finding::Kind kind =
        requirement.verdict == Verdict::not_met ? Finding::Kind::not_met : Finding::Kind::undecided;
    bool any = false;
    for (std::size_t member = 0; member < weld_.group.size(); ++member) {
      if (in_and_out(hold_.band.channels[member], around).in_s) continue;
      const std::size_t only[] = {weld_.group[member]};
      const auto highest = highest_reading(weld_.set, only, around);
      const auto lowest = lowest_reading(weld_.set, only, around);
      Finding finding = finding_on(requirement, kind);
      finding.channel = weld_.name(weld_.group[member]);
      if (!highest) {
        finding.text = fmt::format("{} has no reading there", *finding.channel);
      } else {
        const bool too_cold = highest->celsius < hold_.low_c;
        const ReadingAt& extreme = too_cold ? *highest : *lowest;
        finding.from_s = finding.to_s = extreme.at_s;
        finding.extreme = extreme.celsius;
        finding.text = fmt::format("{} never came into {}: {} {} at {}", *finding.channel, say_band(),
                                   too_cold ? "highest" : "lowest", say_celsius(extreme.celsius),
                                   say_moment(weld_.record, extreme.at_s));
      }
      weld_.out.findings.push_back(std::move(finding));
      any = true;
    }
    if (!any) add_own_finding(requirement);
  }

  /// Whether the record breaks off where the group is in the band or unknown.
  bool open_at_an_end(const Span& within) const {
    const std::vector<GroupSpan>& spans = hold_.band.spans;
    if (spans.empty()) return false;
    const bool start = within.first <= weld_.time().first && spans.front().state != GroupState::out;
    const bool end = within.second >= weld_.time().second && spans.back().state != GroupState::out;
    return start || end;
  }

  void judge_time_max() {
    Requirement requirement = start(RequirementKind::hold_time_max, *asked_.time_max_s);
    const Span around = between_spans(weld_.holds, index_, weld_.time());
    const TimeAbove above = time_at_or_above(weld_.set, weld_.group, hold_.low_c, around);
    if (above.trace) {
      set_measured(requirement, above.longest_s);
      requirement.channel = weld_.name(*above.trace);
      requirement.text =
          fmt::format("{} was at or above {} for {}; at most {}", *requirement.channel,
                      say_celsius(hold_.low_c), say_time(above.longest_s), say_time(requirement.limit));
      if (beyond_limit(requirement, above.longest_s)) {
        requirement.verdict = Verdict::not_met;
      } else if (beyond_limit(requirement, above.longest_with_unknown_s) || open_at_an_end(around)) {
        requirement.verdict = Verdict::undecided;
        requirement.text += "; time that the record does not show could make it longer";
      } else {
        requirement.verdict = Verdict::met;
      }
    }
    add_own_finding(requirement);
    finish(std::move(requirement));
  }

  void judge_departures() {
    Requirement requirement = start(RequirementKind::hold_band, asked_.departures_max_s.value_or(0.0));
    const bool asked = asked_.departures_max_s.has_value();
    if (!hold_.span) {
      if (!asked) return;
      requirement.text = "no hold was found, so nothing can be said of departures within it";
      add_own_finding(requirement);
      return finish(std::move(requirement));
    }
    const TimeOut total = time_out(hold_.band, *hold_.span);
    set_measured(requirement, total.out_s);
    requirement.from_s = hold_.span->first;
    requirement.to_s = hold_.span->second;
    const bool too_long = beyond_limit(requirement, total.out_s);
    requirement.verdict = too_long                                                   ? Verdict::not_met
                          : beyond_limit(requirement, total.out_s + total.unknown_s) ? Verdict::undecided
                                                                                     : Verdict::met;
    requirement.text = fmt::format("out of {} for {} within the hold; at most {}", say_band(),
                                   say_time(total.out_s), say_time(requirement.limit));
    const Finding::Kind kind = !asked || !too_long ? Finding::Kind::note : Finding::Kind::not_met;
    for (const Departure& departure : hold_.band.departures) {
      if (departure.time.first < hold_.span->first || departure.time.second > hold_.span->second) continue;
      const Depth depth = depth_of(weld_.set, weld_.group, departure.time, hold_.low_c, hold_.high_c);
      Finding finding = finding_on(requirement, kind);
      finding.channel = weld_.name(depth.trace);
      finding.from_s = departure.time.first;
      finding.to_s = departure.time.second;
      finding.extreme = depth.celsius;
      finding.text = fmt::format("out of {} for {}: {} at {}{}", say_band(),
                                 say_time(departure.time.second - departure.time.first), *finding.channel,
                                 say_celsius(depth.celsius), departure.filled ? "; within the grace" : "");
      weld_.out.findings.push_back(std::move(finding));
    }
    if (!asked) return;
    if (requirement.verdict == Verdict::undecided) {
      requirement.text += fmt::format("; {} within it are not known", say_time(total.unknown_s));
      add_own_finding(requirement);
    }
    finish(std::move(requirement));
  }

  /// The hold before (-1) or after (+1) in the procedure, with or without a core.
  const HoldCourse* neighbour(int step) const {
    if (step < 0) return index_ > 0 ? &weld_.holds[index_ - 1] : nullptr;
    return index_ + 1 < weld_.holds.size() ? &weld_.holds[index_ + 1] : nullptr;
  }

  void judge_over() {
    Requirement requirement = start(RequirementKind::over, asked_.high->celsius());
    const auto higher = [&](const HoldCourse* other) {
      return other != nullptr && other->high_c > hold_.high_c;
    };
    const bool higher_before = higher(neighbour(-1));
    const bool higher_after = higher(neighbour(+1));
    if (!hold_.span && (higher_before || higher_after)) {
      requirement.text =
          "no hold was found, so which readings are its own cannot be told from the hotter hold beside it";
      add_own_finding(requirement);
      return finish(std::move(requirement));
    }
    Span when = between_spans(weld_.holds, index_, weld_.time());
    if (higher_before) when.first = hold_.span->first;
    if (higher_after) when.second = hold_.span->second;
    const auto highest = highest_reading(weld_.set, weld_.group, when);
    if (!highest) {
      requirement.text = "no reading there";
      add_own_finding(requirement);
      return finish(std::move(requirement));
    }
    set_measured(requirement, highest->celsius);
    requirement.channel = weld_.name(highest->trace);
    requirement.at_s = highest->at_s;
    requirement.verdict = beyond_limit(requirement, highest->celsius) ? Verdict::not_met : Verdict::met;
    requirement.text = fmt::format("highest reading: {} at {} at {}; at most {}", *requirement.channel,
                                   say_celsius(highest->celsius), say_moment(weld_.record, highest->at_s),
                                   say_celsius(requirement.limit));
    if (requirement.verdict == Verdict::not_met) add_hot_places(requirement, weld_.group, when);
    finish(std::move(requirement));
  }

  void add_hot_places(const Requirement& requirement, Group group, const Span& when) {
    for (const HotPlace& place : places_above(weld_.set, group, when, requirement.limit)) {
      Finding finding = finding_on(requirement, Finding::Kind::not_met);
      finding.channel = weld_.name(place.hottest.trace);
      finding.from_s = place.time.first;
      finding.to_s = place.time.second;
      finding.extreme = place.hottest.celsius;
      finding.text = fmt::format("{} was above {}, up to {}", *finding.channel,
                                 say_celsius(requirement.limit), say_celsius(place.hottest.celsius));
      weld_.out.findings.push_back(std::move(finding));
    }
  }

  void judge_spread() {
    Requirement requirement = start(RequirementKind::spread, asked_.spread_max->kelvin());
    SpreadAsked how;
    how.limit_k = requirement.limit;
    const Spread spread =
        hold_.span ? measure_spread(weld_.record, weld_.set, weld_.group, hold_.stretches, how) : Spread{};
    add_spread(weld_, requirement, spread, false);
    finish(std::move(requirement));
  }

  /// Judged on readings: the lowest known one within the hold's stretches.
  void judge_edge() {
    Requirement requirement = start(RequirementKind::edge, *asked_.edge_fraction_min);
    std::optional<ReadingAt> lowest;
    for (const Span& stretch : hold_.stretches) {
      const auto here = lowest_reading(weld_.set, weld_.edge, stretch);
      if (here && (!lowest || here->celsius < lowest->celsius)) lowest = here;
    }
    const TemperatureUnit unit = weld_.procedure.unit;
    const double low = asked_.low.in(unit);
    if (!lowest || low == 0.0) {
      requirement.text = "no thermocouple at the edge of the heated band is known within the hold";
    } else {
      set_measured(requirement, Temperature::of_celsius(lowest->celsius).in(unit) / low);
      requirement.channel = weld_.name(lowest->trace);
      requirement.at_s = lowest->at_s;
      requirement.verdict =
          beyond_limit(requirement, *requirement.measured) ? Verdict::not_met : Verdict::met;
      requirement.text = fmt::format(
          "lowest at the edge of the heated band: {} at {} at {}, {:.3f} of the lower "
          "edge of the hold; at least {:.3f}",
          *requirement.channel, say_celsius(lowest->celsius), say_moment(weld_.record, lowest->at_s),
          *requirement.measured, requirement.limit);
    }
    add_own_finding(requirement);
    finish(std::move(requirement));
  }

  void judge_tempering(RequirementKind kind, double limit) {
    Requirement requirement = start(kind, limit);
    const bool least = requirement.limit_is_least;
    std::optional<std::size_t> worst;
    bool sure = false;
    bool open = false;
    for (const std::size_t index : weld_.group) {
      const auto& tempering = weld_.ground.temperings[index];
      if (!tempering) {
        open = true;
        continue;
      }
      const double p = tempering->parameter;
      const double so_far = worst ? weld_.ground.temperings[*worst]->parameter : p;
      if (!worst || (least ? p < so_far : p > so_far)) worst = index;
      const bool unknown = tempering->unknown_s > kSampleSlack_s;
      // More time can only add: a channel short of the least may have had it where it is unknown.
      const bool beyond = beyond_limit(requirement, p);
      if (beyond && !(least && unknown)) sure = true;
      if (unknown && (beyond == least)) open = true;
    }
    if (!worst) {
      requirement.text = "no channel is known";
    } else {
      set_measured(requirement, weld_.ground.temperings[*worst]->parameter);
      requirement.channel = weld_.name(*worst);
      requirement.verdict = sure ? Verdict::not_met : open ? Verdict::undecided : Verdict::met;
      requirement.text = fmt::format(
          "{} tempering parameter over the whole curve: {} with {:.3f}, worth {:.2f} h at "
          "{}; at {} {:.3f}",
          least ? "lowest" : "highest", *requirement.channel, *requirement.measured,
          equivalent_hours(*requirement.measured, hold_.low_c), say_celsius(hold_.low_c),
          least ? "least" : "most", limit);
    }
    add_own_finding(requirement);
    finish(std::move(requirement));
  }

  const WeldCase& weld_;
  const Stage& stage_;
  const HoldStage& asked_;
  std::size_t index_;
  const HoldCourse& hold_;
};

}  // namespace

void judge_hold(const WeldCase& weld, const Stage& stage, const HoldStage& asked, std::size_t hold) {
  HoldJudge(weld, stage, asked, hold).run();
}

}  // namespace soakwright
