// A heat or a cool stage: rate, smallest overall rate, spread.
#include <algorithm>

#include <fmt/format.h>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/rate_alternatives.h"
#include "core/evaluate/sentences.h"
#include "core/evaluate/stage_evaluations.h"
#include "core/measure/extremes.h"
#include "core/measure/rate.h"
#include "core/measure/spread.h"

namespace soakwright {
namespace {

const char* way_of(const RampStage& asked) {
  return asked.direction == RampStage::Direction::heat ? "heating" : "cooling";
}

std::string say_blind_spot(const WeldCase& weld, const BlindSpot& spot, const RampStage& asked) {
  const std::string& name = weld.name(spot.trace);
  switch (spot.reason) {
    case BlindSpot::Reason::starts_above:
      return fmt::format(
          "the record starts with {} at {}, already at or above {}: what it did before is not shown", name,
          say_celsius(*spot.celsius), say_celsius(asked.above->celsius()));
    case BlindSpot::Reason::ends_above:
      return fmt::format(
          "the record ends with {} at {}, still at or above {}: what it did after is not shown", name,
          say_celsius(*spot.celsius), say_celsius(asked.above->celsius()));
    case BlindSpot::Reason::hole:
      return fmt::format("{} is not known from {}: what it did there is not shown", name,
                         say_span(weld.record, spot.time.first, spot.time.second));
  }
  return {};
}

void add_blind_spots(const WeldCase& weld, const Requirement& requirement, const RampStage& asked,
                     const std::vector<BlindSpot>& spots) {
  for (const BlindSpot& spot : spots) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = weld.name(spot.trace);
    finding.from_s = spot.time.first;
    finding.to_s = spot.time.second;
    finding.extreme = spot.celsius;
    finding.text = say_blind_spot(weld, spot, asked);
    weld.out.findings.push_back(std::move(finding));
  }
}

std::string say_nothing_measured(const RampStage& asked, double width_s) {
  return fmt::format(
      "no {} rate could be measured: nowhere do {} of readings in one piece lie within the stage",
      way_of(asked), say_time(width_s));
}

std::string say_doubt(const WeldCase& weld, const SteepPlace& place) {
  if (weld.guard == nullptr) return ": so little beyond the limit that noise alone could make it";
  return fmt::format(": noise and U = {} leave open whether it was beyond the limit",
                     say_rate(place.steepest.uncertainty));
}

void add_rate_findings(const WeldCase& weld, const Requirement& requirement, const RampStage& asked,
                       const StageRate& rate) {
  for (const SteepPlace& place : rate.places) {
    Finding finding =
        finding_on(requirement, place.surely ? Finding::Kind::not_met : Finding::Kind::inconclusive);
    finding.channel = weld.name(place.trace);
    finding.from_s = place.time.first;
    finding.to_s = place.time.second;
    finding.extreme = place.steepest.window.slope_c_per_h;
    finding.text =
        fmt::format("{} {} at up to {} over {} (standard error {}){}", *finding.channel,
                    asked.direction == RampStage::Direction::heat ? "rose" : "fell",
                    say_rate(*finding.extreme), say_time(rate.width_s),
                    say_rate(place.steepest.standard_error), place.surely ? "" : say_doubt(weld, place));
    weld.out.findings.push_back(std::move(finding));
  }
  for (const std::size_t trace : rate.crossed_unseen) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = weld.name(trace);
    finding.text =
        fmt::format("{} ran through the whole range of the stage with fewer than {} readings in it",
                    *finding.channel, kFewestForSlope);
    weld.out.findings.push_back(std::move(finding));
  }
  if (!rate.worst) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.text = say_nothing_measured(asked, rate.width_s);
    weld.out.findings.push_back(std::move(finding));
  }
  if (rate.widened) {
    Finding note = finding_on(requirement, Finding::Kind::note);
    note.text = fmt::format("the rate is measured over {}, eight intervals of the log, since {} is shorter",
                            say_time(rate.width_s), say_time(weld.procedure.evaluation.rate_window_s));
    weld.out.findings.push_back(std::move(note));
  }
}

Requirement rate_requirement(const WeldCase& weld, const Stage& stage, const RampStage& asked,
                             HeatingRate limit, const StageRate& rate, const std::vector<BlindSpot>& blind) {
  const bool heat = asked.direction == RampStage::Direction::heat;
  Requirement requirement =
      requirement_for(heat ? RequirementKind::heating_rate : RequirementKind::cooling_rate, stage.number,
                      weld.weld, limit.celsius_per_hour());
  const bool surely =
      std::any_of(rate.places.begin(), rate.places.end(), [](const auto& p) { return p.surely; });
  for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i) {
    const auto& worst = rate.by_window[i].worst;
    requirement.by_window.emplace_back(fmt::format("{} min", kAlternativeMinutes[i]),
                                       worst ? std::optional{worst->window.slope_c_per_h} : std::nullopt);
  }
  if (!rate.worst) {
    requirement.text = say_nothing_measured(asked, rate.width_s);
    return requirement;
  }
  const WindowSlope& window = rate.worst->window;
  if (weld.guard != nullptr) {
    set_measured(requirement, window.slope_c_per_h, rate.worst->uncertainty);
    requirement.margin = decimal_difference(requirement.limit, rate.worst->held);
  } else {
    set_measured(requirement, window.slope_c_per_h);
  }
  requirement.channel = weld.name(rate.worst->trace);
  requirement.at_s = window.at_s;
  requirement.from_s = window.from_s;
  requirement.to_s = window.to_s;
  requirement.standard_error = rate.worst->standard_error;
  if (surely)
    requirement.verdict = Verdict::not_met;
  else if (!blind.empty() || !rate.crossed_unseen.empty() || beyond_limit(requirement, rate.worst->held))
    requirement.verdict = Verdict::inconclusive;
  else
    requirement.verdict = Verdict::met;
  requirement.text = fmt::format("steepest {}: {} at {} over {} about {} (standard error {}); at most {}",
                                 heat ? "rise" : "fall", *requirement.channel, say_rate(window.slope_c_per_h),
                                 say_time(window.to_s - window.from_s), say_moment(weld.record, window.at_s),
                                 say_rate(*requirement.standard_error), say_rate(requirement.limit)) +
                     say_uncertainty(weld, requirement);
  return requirement;
}

void evaluate_smallest_rate(const WeldCase& weld, const Stage& stage, const RampStage& asked,
                            const std::vector<OverallRate>& overall, const std::vector<BlindSpot>& blind,
                            const std::vector<std::pair<std::string, std::optional<double>>>& by_channel) {
  const bool heat = asked.direction == RampStage::Direction::heat;
  Requirement requirement =
      requirement_for(heat ? RequirementKind::heating_rate_min : RequirementKind::cooling_rate_min,
                      stage.number, weld.weld, asked.rate_min->celsius_per_hour());
  requirement.overall = by_channel;
  const OverallRate* smallest = nullptr;
  double smallest_margin = 0.0;
  Verdict worst = Verdict::met;
  for (const OverallRate& rate : overall) {
    if (!rate.rate_c_per_h) continue;
    const double u = overall_uncertainty(weld, rate);
    worst = std::max(worst, held_to_limit(requirement, *rate.rate_c_per_h, u));
    const double margin = margin_after(requirement, *rate.rate_c_per_h, u);
    if (smallest != nullptr && margin >= smallest_margin) continue;
    smallest = &rate;
    smallest_margin = margin;
  }
  if (smallest == nullptr) {
    requirement.text = fmt::format(
        "no overall {} rate: no channel is shown from one end of the ramp to the other", way_of(asked));
  } else {
    if (weld.guard != nullptr)
      set_measured(requirement, *smallest->rate_c_per_h, overall_uncertainty(weld, *smallest));
    else
      set_measured(requirement, *smallest->rate_c_per_h);
    requirement.channel = weld.name(smallest->trace);
    requirement.from_s = smallest->from_s;
    requirement.to_s = smallest->to_s;
    requirement.text = fmt::format("slowest over the whole ramp: {} at {}; at least {}", *requirement.channel,
                                   say_rate(*requirement.measured), say_rate(requirement.limit)) +
                       say_uncertainty(weld, requirement);
    requirement.verdict = worst == Verdict::met && !blind.empty() ? Verdict::inconclusive : worst;
  }
  if (requirement.verdict != Verdict::met) {
    Finding finding =
        finding_on(requirement, requirement.verdict == Verdict::not_met ? Finding::Kind::not_met
                                                                        : Finding::Kind::inconclusive);
    finding.channel = requirement.channel;
    finding.from_s = requirement.from_s;
    finding.to_s = requirement.to_s;
    finding.extreme = requirement.measured;
    finding.text = requirement.text;
    weld.out.findings.push_back(std::move(finding));
  }
  add_blind_spots(weld, requirement, asked, blind);
  weld.out.requirements.push_back(std::move(requirement));
}

void evaluate_ramp_spread(const WeldCase& weld, const Stage& stage, const RampStage& asked,
                          const StageTime& when, const std::vector<BlindSpot>& blind) {
  if (!has_spread_requirement(weld, stage, asked.spread_within_m)) return;
  Requirement requirement =
      requirement_for(RequirementKind::spread, stage.number, weld.weld, asked.spread_max->kelvin());
  SpreadAsked how;
  if (asked.above) how.above_c = asked.above->celsius();
  how.within_m = asked.spread_within_m;
  how.limit_k = requirement.limit;
  how.guard = weld.guard;
  const Spread spread = measure_spread(weld.record, weld.set, weld.group, {when.spread_time}, how);
  SpreadGaps gaps;
  if (!blind.empty()) gaps.unseen = "the record does not show all of the stage: see the findings";
  add_spread(weld, requirement, spread, gaps);
  add_blind_spots(weld, requirement, asked, blind);
  weld.out.requirements.push_back(std::move(requirement));
}

}  // namespace

void evaluate_ramp(const WeldCase& weld, const Stage& stage, const RampStage& asked) {
  const StageTime when = stage_time(weld.holds, stage.number - 1, asked.direction, weld.time());
  const std::vector<BlindSpot> blind = blind_spots(weld.set, weld.group, weld.holds, when, asked);

  StageCourse course;
  course.weld = weld.weld;
  course.number = stage.number;
  course.kind = asked.direction == RampStage::Direction::heat ? "heat" : "cool";
  course.start_s = when.time.first;
  course.end_s = when.time.second;
  for (const std::size_t index : weld.group) {
    StageChannel channel;
    channel.name = weld.name(index);
    if (const auto summary = summary_of(weld.set.traces[index], {when.time})) {
      channel.min_c = summary->min_c;
      channel.max_c = summary->max_c;
      channel.mean_c = summary->mean_c;
    }
    course.channels.push_back(std::move(channel));
  }
  weld.out.stages.push_back(std::move(course));

  std::vector<OverallRate> overall;
  std::vector<std::pair<std::string, std::optional<double>>> by_channel;
  if (asked.rate_max || asked.rate_min) {
    overall = overall_rates(weld.set, weld.group, when, asked);
    for (const OverallRate& rate : overall) by_channel.emplace_back(weld.name(rate.trace), rate.rate_c_per_h);
  }
  if (asked.rate_max) {
    const HeatingRate limit = limit_at(*asked.rate_max, weld.thickness).value_or(HeatingRate{});
    const StageRate rate =
        stage_rate(weld.record, weld.ground.ticks, weld.set, weld.group, when, asked,
                   weld.procedure.evaluation.rate_window_s, limit.celsius_per_hour(), weld.guard);
    Requirement requirement = rate_requirement(weld, stage, asked, limit, rate, blind);
    requirement.overall = by_channel;
    requirement.alternatives.rates = rate_bases(weld, requirement, rate, overall, !blind.empty());
    add_rate_findings(weld, requirement, asked, rate);
    add_blind_spots(weld, requirement, asked, blind);
    weld.out.requirements.push_back(std::move(requirement));
  }
  if (asked.rate_min) evaluate_smallest_rate(weld, stage, asked, overall, blind, by_channel);
  if (asked.spread_max) evaluate_ramp_spread(weld, stage, asked, when, blind);
}

}  // namespace soakwright
