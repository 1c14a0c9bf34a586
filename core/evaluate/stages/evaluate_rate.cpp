// SPDX-License-Identifier: GPL-3.0-or-later
// The rates of a heat or a cool stage: the largest (rate_max) and the smallest overall (rate_min).
#include <algorithm>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/stages/ramp_case.h"
#include "core/evaluate/stages/rate_alternatives.h"

namespace soakwright {
namespace {

using RatesByChannel = std::vector<std::pair<std::string, std::optional<double>>>;

/// Mean rates from end to end of the ramp, of the weld's group and of the edge of the heated band.
struct OverallRates {
  std::vector<OverallRate> group;
  RatesByChannel by_channel, of_edge;
};

double width_of(const MeasuredRate& rate) { return rate.window.to_s - rate.window.from_s; }

/// One sentence for a rise, the other for a fall.
Sentence way(const RampCase& ramp, Sentence heats, Sentence cools) { return ramp.heats() ? heats : cools; }

HeatingRate rate_of(double c_per_h) { return HeatingRate::of_celsius_per_hour(c_per_h); }

Statement nothing_measured(const RampCase& ramp, double width_s) {
  return state(way(ramp, Sentence::no_heating_rate, Sentence::no_cooling_rate),
               Duration::of_seconds(width_s));
}

/// A rate measured beside the stage's own time.
void add_beside(const RampCase& ramp, bool beside_hold, Statements& statements) {
  if (beside_hold)
    statements.push_back(state(way(ramp, Sentence::rate_after_hold, Sentence::rate_before_hold)));
}

/// Why a place beyond the limit is not called not met.
Statement doubt(const RampCase& ramp, const Requirement& requirement, const SteepPlace& place) {
  const MeasuredRate& rate = place.steepest;
  const double least =
      rate.window.slope_c_per_h - kSureStandardErrors * rate.standard_error - rate.uncertainty;
  if (beyond_limit(requirement, least)) return state(Sentence::rate_not_without_a_tenth);
  if (ramp.weld.guard != nullptr) return state(Sentence::rate_within_noise_and_u, rate_of(rate.uncertainty));
  return state(Sentence::rate_within_noise);
}

Finding finding_at(const RampCase& ramp, const Requirement& requirement, Finding::Kind kind,
                   std::size_t trace, const Span& time) {
  Finding finding = finding_on(requirement, kind);
  finding.channel = ramp.weld.name(trace);
  finding.from_s = time.first;
  finding.to_s = time.second;
  return finding;
}

void add_steep_places(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  for (const SteepPlace& place : rate.places) {
    Finding finding =
        finding_at(ramp, requirement, place.certain ? Finding::Kind::not_met : Finding::Kind::inconclusive,
                   place.trace, place.time);
    const MeasuredRate& steepest = place.steepest;
    finding.extreme = rate_of(steepest.window.slope_c_per_h);
    finding.what = {state(way(ramp, Sentence::heated_up_to, Sentence::cooled_up_to), *finding.channel,
                          *finding.extreme, Duration::of_seconds(width_of(steepest)),
                          rate_of(steepest.standard_error))};
    add_beside(ramp, steepest.beside_hold, finding.what);
    if (!place.certain)
      finding.what.push_back(doubt(ramp, requirement, place));
    else if (place.certain->window.at_s != steepest.window.at_s)
      finding.what.push_back(state(Sentence::rate_certain_window, AtMoment{place.certain->window.at_s},
                                   rate_of(place.certain->window.slope_c_per_h),
                                   Duration::of_seconds(width_of(*place.certain)),
                                   rate_of(place.certain->standard_error)));
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void add_overall(const RampCase& ramp, const Requirement& requirement, const OverallRate& rate) {
  Finding finding = finding_at(ramp, requirement, Finding::Kind::not_met, rate.trace,
                               {rate.lasting->from_s, rate.lasting->to_s});
  finding.extreme = rate_of(rate.mean->rate_c_per_h);
  finding.over_whole_ramp = true;
  finding.what = {state(way(ramp, Sentence::heated_over_ramp, Sentence::cooled_over_ramp), *finding.channel,
                        *finding.extreme, Duration::of_seconds(rate.mean->to_s - rate.mean->from_s))};
  ramp.weld.out.findings.push_back(std::move(finding));
}

void add_jumps(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  for (const RateJump& jump : rate.jumps) {
    Finding finding = finding_at(ramp, requirement, Finding::Kind::inconclusive, jump.trace, jump.time);
    finding.extreme = TemperatureDifference::of_kelvin(jump.kelvin);
    finding.what = {state(way(ramp, Sentence::jumped_up, Sentence::jumped_down), *finding.channel,
                          *finding.extreme, Duration::of_seconds(jump.time.second - jump.time.first),
                          Duration::of_seconds(rate.width_s))};
    add_beside(ramp, jump.beside_hold, finding.what);
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void add_unmeasured(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  for (const std::size_t trace : rate.crossed_unseen) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = ramp.weld.name(trace);
    finding.what = {
        state(Sentence::range_crossed_unseen, *finding.channel, Duration::of_seconds(rate.width_s))};
    ramp.weld.out.findings.push_back(std::move(finding));
  }
  if (!rate.own_time_measured) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.what = {nothing_measured(ramp, rate.width_s)};
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void add_width_note(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  if (!rate.widened) return;
  Finding note = finding_on(requirement, Finding::Kind::note);
  note.what = {state(Sentence::window_widened, Duration::of_seconds(rate.width_s),
                     Duration::of_seconds(ramp.weld.procedure.evaluation.rate_window_s))};
  ramp.weld.out.findings.push_back(std::move(note));
}

void set_steepest(const RampCase& ramp, Requirement& requirement, const MeasuredRate& worst) {
  const WindowSlope& window = worst.window;
  if (ramp.weld.guard != nullptr)
    set_measured(requirement, window.slope_c_per_h, worst.uncertainty);
  else
    set_measured(requirement, window.slope_c_per_h);
  requirement.channel = ramp.weld.name(worst.trace);
  requirement.at_s = window.at_s;
  requirement.from_s = window.from_s;
  requirement.to_s = window.to_s;
  requirement.standard_error = worst.standard_error;
}

/// The steepest rate of each thermocouple at the edge of the heated band; nothing of it decides.
RatesByChannel edge_steepest(const RampCase& ramp) {
  const WeldCase& weld = ramp.weld;
  RatesByChannel steepest;
  if (weld.edge.empty()) return steepest;
  const StageRate rate =
      stage_rate(weld.record, weld.ground.ticks, weld.set, weld.edge, weld.holds, ramp.when,
                 {ramp.ramp, weld.procedure.evaluation.rate_window_s,
                  weld.procedure.evaluation.in_range_min_s, std::nullopt, nullptr});
  for (std::size_t member = 0; member < weld.edge.size(); ++member)
    steepest.emplace_back(weld.name(weld.edge[member]), rate.steepest_c_per_h[member]);
  return steepest;
}

void evaluate_largest_rate(const RampCase& ramp, const OverallRates& rates) {
  const WeldCase& weld = ramp.weld;
  const std::vector<OverallRate>& overall = rates.group;
  Requirement requirement = requirement_for(
      ramp.heats() ? RequirementKind::heating_rate : RequirementKind::cooling_rate, ramp.stage.number,
      weld.weld, limit_at(*ramp.ramp.rate_max, weld.thickness).value_or(HeatingRate{}).celsius_per_hour());
  requirement.overall = rates.by_channel;
  requirement.edge_overall = rates.of_edge;
  requirement.edge_steepest = edge_steepest(ramp);
  const StageRate rate =
      stage_rate(weld.record, weld.ground.ticks, weld.set, weld.group, weld.holds, ramp.when,
                 {ramp.ramp, weld.procedure.evaluation.rate_window_s,
                  weld.procedure.evaluation.in_range_min_s, requirement.limit, weld.guard});
  requirement.window_s = rate.width_s;
  for (std::size_t member = 0; member < weld.group.size(); ++member)
    requirement.steepest.emplace_back(weld.name(weld.group[member]), rate.steepest_c_per_h[member]);
  std::vector<const OverallRate*> too_fast;
  for (std::size_t member = 0; member < overall.size(); ++member)
    if (overall_verdict(weld, requirement, overall[member], rate.noise_k[member]) == Verdict::not_met)
      too_fast.push_back(&overall[member]);
  const bool certain = !too_fast.empty() || std::any_of(rate.places.begin(), rate.places.end(),
                                                        [](const auto& place) { return place.certain; });
  const bool doubtful = !ramp.blind_spots.empty() || !rate.crossed_unseen.empty() || !rate.jumps.empty() ||
                        !rate.places.empty() || !rate.own_time_measured;
  requirement.verdict = certain ? Verdict::not_met : doubtful ? Verdict::inconclusive : Verdict::met;
  if (rate.worst) {
    set_steepest(ramp, requirement, *rate.worst);
    add_beside(ramp, rate.worst->beside_hold, requirement.remarks);
    remark_uncertainty(weld, requirement);
  } else {
    requirement.remarks.push_back(nothing_measured(ramp, rate.width_s));
  }
  if (!too_fast.empty())
    requirement.remarks.push_back(
        state(way(ramp, Sentence::heated_over_ramp, Sentence::cooled_over_ramp),
              weld.name(too_fast.front()->trace), rate_of(too_fast.front()->mean->rate_c_per_h),
              Duration::of_seconds(too_fast.front()->mean->to_s - too_fast.front()->mean->from_s)));
  requirement.alternatives.rates =
      rate_alternatives(weld, requirement, rate, overall, !ramp.blind_spots.empty());

  add_steep_places(ramp, requirement, rate);
  for (const OverallRate* one : too_fast) add_overall(ramp, requirement, *one);
  if (!certain) add_jumps(ramp, requirement, rate);
  add_unmeasured(ramp, requirement, rate);
  add_width_note(ramp, requirement, rate);
  add_blind_spots(ramp, requirement);
  weld.out.requirements.push_back(std::move(requirement));
}

/// The smallest overall rate after U, and the worst verdict of all; nullopt if no channel has one.
struct SmallestRate {
  const OverallRate* rate = nullptr;
  Verdict verdict = Verdict::met;
};
SmallestRate smallest_of(const WeldCase& weld, const Requirement& requirement,
                         const std::vector<OverallRate>& overall) {
  SmallestRate smallest;
  double smallest_margin = 0.0;
  for (const OverallRate& rate : overall) {
    if (!rate.mean) {
      smallest.verdict = std::max(smallest.verdict, Verdict::inconclusive);
      continue;
    }
    const double u = overall_uncertainty(weld, rate.trace, *rate.mean);
    smallest.verdict = std::max(smallest.verdict, held_to_limit(requirement, rate.mean->rate_c_per_h, u));
    const double margin = margin_after(requirement, rate.mean->rate_c_per_h, u);
    if (smallest.rate != nullptr && margin >= smallest_margin) continue;
    smallest.rate = &rate;
    smallest_margin = margin;
  }
  return smallest;
}

void evaluate_smallest_rate(const RampCase& ramp, const OverallRates& rates) {
  const WeldCase& weld = ramp.weld;
  const std::vector<OverallRate>& overall = rates.group;
  Requirement requirement =
      requirement_for(ramp.heats() ? RequirementKind::heating_rate_min : RequirementKind::cooling_rate_min,
                      ramp.stage.number, weld.weld, ramp.ramp.rate_min->celsius_per_hour());
  requirement.overall = rates.by_channel;
  requirement.edge_overall = rates.of_edge;
  const SmallestRate smallest = smallest_of(weld, requirement, overall);
  if (smallest.rate == nullptr) {
    requirement.remarks.push_back(
        state(way(ramp, Sentence::no_overall_heating_rate, Sentence::no_overall_cooling_rate)));
  } else {
    const MeanRate& mean = *smallest.rate->mean;
    if (weld.guard != nullptr)
      set_measured(requirement, mean.rate_c_per_h, overall_uncertainty(weld, smallest.rate->trace, mean));
    else
      set_measured(requirement, mean.rate_c_per_h);
    requirement.channel = weld.name(smallest.rate->trace);
    requirement.from_s = mean.from_s;
    requirement.to_s = mean.to_s;
    remark_uncertainty(weld, requirement);
    requirement.verdict = smallest.verdict == Verdict::met && !ramp.blind_spots.empty()
                              ? Verdict::inconclusive
                              : smallest.verdict;
  }
  if (smallest.rate == nullptr || held_to_limit(requirement, *requirement.measured,
                                                requirement.uncertainty.value_or(0.0)) != Verdict::met) {
    Finding finding =
        finding_on(requirement, requirement.verdict == Verdict::not_met ? Finding::Kind::not_met
                                                                        : Finding::Kind::inconclusive);
    finding.channel = requirement.channel;
    finding.from_s = requirement.from_s;
    finding.to_s = requirement.to_s;
    finding.extreme = requirement.measured_quantity();
    weld.out.findings.push_back(std::move(finding));
  }
  for (const OverallRate& rate : overall) {
    if (rate.mean || smallest.rate == nullptr) continue;
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = weld.name(rate.trace);
    finding.what = {
        state(way(ramp, Sentence::channel_without_heating_rate, Sentence::channel_without_cooling_rate),
              *finding.channel)};
    weld.out.findings.push_back(std::move(finding));
  }
  add_blind_spots(ramp, requirement);
  weld.out.requirements.push_back(std::move(requirement));
}

}  // namespace

void evaluate_rates(const RampCase& ramp) {
  if (!ramp.ramp.rate_max && !ramp.ramp.rate_min) return;
  const WeldCase& weld = ramp.weld;
  const double brief_s = brief_crossing_s(weld.procedure.evaluation.in_range_min_s, weld.record.interval_s);
  const auto named = [&](const std::vector<OverallRate>& overall) {
    RatesByChannel by_channel;
    for (const OverallRate& rate : overall)
      by_channel.emplace_back(weld.name(rate.trace),
                              rate.mean ? std::optional{rate.mean->rate_c_per_h} : std::nullopt);
    return by_channel;
  };
  OverallRates rates;
  rates.group = overall_rates(weld.set, weld.group, ramp.when, ramp.ramp, brief_s);
  rates.by_channel = named(rates.group);
  rates.of_edge = named(overall_rates(weld.set, weld.edge, ramp.when, ramp.ramp, brief_s));
  if (ramp.ramp.rate_max) evaluate_largest_rate(ramp, rates);
  if (ramp.ramp.rate_min) evaluate_smallest_rate(ramp, rates);
}

}  // namespace soakwright
