// The rates of a heat or a cool stage: the largest (rate_max) and the smallest overall (rate_min).
#include <algorithm>

#include <fmt/format.h>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/ramp_case.h"
#include "core/evaluate/rate_alternatives.h"
#include "core/evaluate/sentences.h"

namespace soakwright {
namespace {

using OverallByChannel = std::vector<std::pair<std::string, std::optional<double>>>;

std::string way_of(const RampCase& ramp) { return ramp.heats() ? "heating" : "cooling"; }
std::string moved(const RampCase& ramp) { return ramp.heats() ? "rose" : "fell"; }

/// " after the hold" where a rate is measured beside the stage's own time.
std::string say_beside(const RampCase& ramp, bool beside_hold) {
  if (!beside_hold) return {};
  return ramp.heats() ? " after the hold" : " before the hold";
}

double width_of(const MeasuredRate& rate) { return rate.window.to_s - rate.window.from_s; }

/// "210.2 °C/h over 15 min (standard error 0.4 °C/h)"
std::string say_window(const MeasuredRate& rate) {
  return fmt::format("{} over {} (standard error {})", say_rate(rate.window.slope_c_per_h),
                     say_time(width_of(rate)), say_rate(rate.standard_error));
}

std::string say_nothing_measured(const RampCase& ramp, double width_s) {
  return fmt::format(
      "no {} rate could be measured: nowhere do {} of readings in one piece lie within the stage",
      way_of(ramp), say_time(width_s));
}

/// Why a place beyond the limit is not called not met.
std::string say_doubt(const RampCase& ramp, const Requirement& requirement, const SteepPlace& place) {
  const MeasuredRate& rate = place.steepest;
  const double least =
      rate.window.slope_c_per_h - kSureStandardErrors * rate.standard_error - rate.uncertainty;
  if (beyond_limit(requirement, least))
    return ": without a tenth of the readings the rate is not certainly above the limit";
  if (ramp.weld.guard != nullptr)
    return fmt::format(": noise and U = {} leave open whether it was above the limit",
                       say_rate(rate.uncertainty));
  return ": less than four standard errors above the limit, so that noise alone could make it";
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
    finding.extreme = place.steepest.window.slope_c_per_h;
    finding.text = fmt::format("{} {} at up to {}{}", *finding.channel, moved(ramp),
                               say_window(place.steepest), say_beside(ramp, place.steepest.beside_hold));
    if (!place.certain)
      finding.text += say_doubt(ramp, requirement, place);
    else if (place.certain->window.at_s != place.steepest.window.at_s)
      finding.text +=
          fmt::format("; the window at {} is certainly above the limit: {}",
                      say_moment(ramp.weld.record, place.certain->window.at_s), say_window(*place.certain));
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void add_overall(const RampCase& ramp, const Requirement& requirement, const OverallRate& rate) {
  Finding finding = finding_at(ramp, requirement, Finding::Kind::not_met, rate.trace,
                               {rate.lasting->from_s, rate.lasting->to_s});
  finding.extreme = rate.mean->rate_c_per_h;
  finding.over_whole_ramp = true;
  finding.text = fmt::format(
      "{} {} at {} over the whole ramp ({}): an overall rate above the limit proves a steeper one within it",
      *finding.channel, moved(ramp), say_rate(rate.mean->rate_c_per_h),
      say_time(rate.mean->to_s - rate.mean->from_s));
  ramp.weld.out.findings.push_back(std::move(finding));
}

void add_jumps(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  for (const RateJump& jump : rate.jumps) {
    Finding finding = finding_at(ramp, requirement, Finding::Kind::inconclusive, jump.trace, jump.time);
    finding.extreme = jump.kelvin;
    finding.text = fmt::format(
        "{} {} by {} in {}{}: no window of {} shows it, and the record cannot tell whether the work did so "
        "or the thermocouple",
        *finding.channel, moved(ramp), say_kelvin(jump.kelvin), say_time(jump.time.second - jump.time.first),
        say_beside(ramp, jump.beside_hold), say_time(rate.width_s));
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void add_unmeasured(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  for (const std::size_t trace : rate.crossed_unseen) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = ramp.weld.name(trace);
    finding.text = fmt::format("{} ran through the whole range of the stage in less than a window of {}",
                               *finding.channel, say_time(rate.width_s));
    ramp.weld.out.findings.push_back(std::move(finding));
  }
  if (!rate.own_time_measured) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.text = say_nothing_measured(ramp, rate.width_s);
    ramp.weld.out.findings.push_back(std::move(finding));
  }
}

void add_width_note(const RampCase& ramp, const Requirement& requirement, const StageRate& rate) {
  if (!rate.widened) return;
  Finding note = finding_on(requirement, Finding::Kind::note);
  note.text = fmt::format("the rate is measured over {}, eight intervals of the log, since {} is shorter",
                          say_time(rate.width_s), say_time(ramp.weld.procedure.evaluation.rate_window_s));
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

std::string say_steepest(const RampCase& ramp, const Requirement& requirement, const MeasuredRate& worst) {
  return fmt::format("steepest {}: {} at {} over {} about {}{} (standard error {}); at most {}",
                     ramp.heats() ? "rise" : "fall", *requirement.channel,
                     say_rate(worst.window.slope_c_per_h), say_time(width_of(worst)),
                     say_moment(ramp.weld.record, worst.window.at_s), say_beside(ramp, worst.beside_hold),
                     say_rate(worst.standard_error), say_rate(requirement.limit)) +
         say_uncertainty(ramp.weld, requirement);
}

void evaluate_largest_rate(const RampCase& ramp, const std::vector<OverallRate>& overall,
                           const OverallByChannel& by_channel) {
  const WeldCase& weld = ramp.weld;
  Requirement requirement = requirement_for(
      ramp.heats() ? RequirementKind::heating_rate : RequirementKind::cooling_rate, ramp.stage.number,
      weld.weld, limit_at(*ramp.ramp.rate_max, weld.thickness).value_or(HeatingRate{}).celsius_per_hour());
  requirement.overall = by_channel;
  const StageRate rate =
      stage_rate(weld.record, weld.ground.ticks, weld.set, weld.group, weld.holds, ramp.when,
                 {ramp.ramp, weld.procedure.evaluation.rate_window_s,
                  weld.procedure.evaluation.in_range_min_s, requirement.limit, weld.guard});
  for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i) {
    const auto& worst = rate.by_window[i].worst;
    requirement.by_window.emplace_back(fmt::format("{} min", kAlternativeMinutes[i]),
                                       worst ? std::optional{worst->window.slope_c_per_h} : std::nullopt);
  }
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
    requirement.text = say_steepest(ramp, requirement, *rate.worst);
  } else {
    requirement.text = say_nothing_measured(ramp, rate.width_s);
  }
  if (!too_fast.empty())
    requirement.text += fmt::format("; over the whole ramp {} {} at {}", weld.name(too_fast.front()->trace),
                                    moved(ramp), say_rate(too_fast.front()->mean->rate_c_per_h));
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

/// The smallest overall rate after U, and the worst verdict of all; nothing where no channel has one.
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

void evaluate_smallest_rate(const RampCase& ramp, const std::vector<OverallRate>& overall,
                            const OverallByChannel& by_channel) {
  const WeldCase& weld = ramp.weld;
  Requirement requirement =
      requirement_for(ramp.heats() ? RequirementKind::heating_rate_min : RequirementKind::cooling_rate_min,
                      ramp.stage.number, weld.weld, ramp.ramp.rate_min->celsius_per_hour());
  requirement.overall = by_channel;
  const SmallestRate smallest = smallest_of(weld, requirement, overall);
  if (smallest.rate == nullptr) {
    requirement.text = fmt::format(
        "no overall {} rate: no channel is shown from one end of the ramp to the other", way_of(ramp));
  } else {
    const MeanRate& mean = *smallest.rate->mean;
    if (weld.guard != nullptr)
      set_measured(requirement, mean.rate_c_per_h, overall_uncertainty(weld, smallest.rate->trace, mean));
    else
      set_measured(requirement, mean.rate_c_per_h);
    requirement.channel = weld.name(smallest.rate->trace);
    requirement.from_s = mean.from_s;
    requirement.to_s = mean.to_s;
    requirement.text = fmt::format("slowest over the whole ramp: {} at {}; at least {}", *requirement.channel,
                                   say_rate(*requirement.measured), say_rate(requirement.limit)) +
                       say_uncertainty(weld, requirement);
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
    finding.extreme = requirement.measured;
    finding.text = requirement.text;
    weld.out.findings.push_back(std::move(finding));
  }
  for (const OverallRate& rate : overall) {
    if (rate.mean || smallest.rate == nullptr) continue;
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = weld.name(rate.trace);
    finding.text =
        fmt::format("{} has no overall {} rate: it is not shown from one end of the ramp to the other",
                    *finding.channel, way_of(ramp));
    weld.out.findings.push_back(std::move(finding));
  }
  add_blind_spots(ramp, requirement);
  weld.out.requirements.push_back(std::move(requirement));
}

}  // namespace

void evaluate_rates(const RampCase& ramp) {
  if (!ramp.ramp.rate_max && !ramp.ramp.rate_min) return;
  const std::vector<OverallRate> overall = overall_rates(
      ramp.weld.set, ramp.weld.group, ramp.when, ramp.ramp,
      brief_crossing_s(ramp.weld.procedure.evaluation.in_range_min_s, ramp.weld.record.interval_s));
  OverallByChannel by_channel;
  for (const OverallRate& rate : overall)
    by_channel.emplace_back(ramp.weld.name(rate.trace),
                            rate.mean ? std::optional{rate.mean->rate_c_per_h} : std::nullopt);
  if (ramp.ramp.rate_max) evaluate_largest_rate(ramp, overall, by_channel);
  if (ramp.ramp.rate_min) evaluate_smallest_rate(ramp, overall, by_channel);
}

}  // namespace soakwright
