// SPDX-License-Identifier: GPL-3.0-or-later
// How hot a hold was: over-temperature, at the edge of the heated band, tempering.
#include <cmath>
#include <limits>
#include <string>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/previous_curves.h"
#include "core/evaluate/stages/hold_case.h"
#include "core/measure/holds/hold_time.h"
#include "core/measure/tempering.h"
#include "core/measure/traces/unknown_time.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

/// The hold before (-1) or after (+1) in the procedure, with a continuous hold or without.
const HoldCourse* neighbour(const HoldCase& hold, int step) {
  if (step < 0) return hold.index > 0 ? &hold.weld.holds[hold.index - 1] : nullptr;
  return hold.index + 1 < hold.weld.holds.size() ? &hold.weld.holds[hold.index + 1] : nullptr;
}

constexpr double kNoLevel = std::numeric_limits<double>::infinity();

/// The lowest reading at the edge of the heated band, as a share of the hold's `low`.
struct EdgeShare {
  ReadingAt reading;
  double share = 0.0;
  double uncertainty = 0.0;
  Verdict verdict = Verdict::met;
};

std::optional<EdgeShare> lowest_share(const HoldCase& hold, const Requirement& requirement, double low) {
  const WeldCase& weld = hold.weld;
  const TemperatureUnit unit = weld.procedure.unit;
  std::optional<EdgeShare> worst;
  Verdict verdict = Verdict::met;
  for (const Span& in_range : hold.hold.in_range)
    for (const ReadingAt& reading : lowest_of_each(weld.set, weld.edge, in_range)) {
      EdgeShare here{reading, Temperature::of_celsius(reading.celsius).in(unit) / low, 0.0, Verdict::met};
      if (weld.guard != nullptr) {
        const double u =
            weld.guard->of(weld.set.traces[reading.trace], reading.source).expanded_k(reading.celsius);
        here.uncertainty = TemperatureDifference::of_kelvin(u).in(unit) / std::fabs(low);
      }
      verdict = std::max(verdict, held_to_limit(requirement, here.share, here.uncertainty));
      const auto left = [](const EdgeShare& edge) { return edge.share - edge.uncertainty; };
      const bool lower = !worst || left(here) < left(*worst);
      const bool earlier = worst && left(here) == left(*worst) && reading.at_s < worst->reading.at_s;
      if (lower || earlier) worst = here;
    }
  if (worst) worst->verdict = verdict;
  return worst;
}

/// What one channel's curve is worth, and within which bounds where the decision is guarded.
struct Worth {
  std::string channel;
  std::optional<double> parameter, least, most;
  double unknown_s = 0.0;
  bool all_there = true;  ///< every record that counts has the channel
};

/// Over all records of the weld: the metal keeps what each gave it, however the hold time is counted.
std::vector<Worth> worth_of_group(const WeldCase& weld) {
  const PreviousCurves previous(weld);
  const double constant = weld.procedure.evaluation.tempering_constant;
  std::vector<Worth> all(weld.group.size());
  parallel_for(weld.group.size(), [&](std::size_t member) {
    const std::size_t index = weld.group[member];
    Worth& worth = all[member];
    worth.channel = weld.name(index);
    std::vector<CurvePart> parts = previous.of(weld.name(index), worth.all_there);
    parts.push_back({&weld.set.traces[index], weld.time(), weld.guard});
    const auto tempering =
        previous.empty() ? weld.ground.temperings[index] : tempering_over(parts, 0.0, constant);
    if (!tempering) return;
    worth.parameter = worth.least = worth.most = tempering->parameter;
    worth.unknown_s = tempering->unknown_s;
    if (weld.guard == nullptr) return;
    const auto bound = [&](double sign) -> std::optional<double> {
      const auto moved = tempering_over(parts, sign, constant);
      return moved ? std::optional{moved->parameter} : std::nullopt;
    };
    worth.least = bound(-1.0);
    worth.most = bound(+1.0);
  });
  // A thermocouple that only previous records have: what it got in this one is not known.
  for (const std::string& name : previous.not_here(weld)) {
    Worth& worth = all.emplace_back();
    worth.channel = name;
    worth.all_there = false;
    bool all_there = false;
    const std::vector<CurvePart> parts = previous.of(name, all_there);
    const auto at = [&](double sign) -> std::optional<double> {
      const auto tempering = tempering_over(parts, sign, constant);
      return tempering ? std::optional{tempering->parameter} : std::nullopt;
    };
    worth.parameter = worth.least = worth.most = at(0.0);
    if (weld.guard == nullptr) continue;
    worth.least = at(-1.0);
    worth.most = at(+1.0);
  }
  return all;
}

}  // namespace

void evaluate_over(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  Requirement requirement = hold.start(RequirementKind::over, hold.specified.high->celsius());
  const auto higher = [&](const HoldCourse* other) {
    return other != nullptr && other->high_c > hold.hold.high_c;
  };
  const bool higher_before = higher(neighbour(hold, -1));
  const bool higher_after = higher(neighbour(hold, +1));
  if (!hold.hold.period && (higher_before || higher_after)) {
    requirement.remarks.push_back(state(Sentence::no_hold_beside_hotter));
    hold.add_own_finding(requirement);
    return hold.finish(std::move(requirement));
  }
  Span when = between_spans(weld.holds, hold.index, weld.time());
  if (higher_before) when.first = hold.hold.period->first;
  if (higher_after) when.second = hold.hold.period->second;
  const auto evaluated = evaluated_extreme(weld, requirement, weld.group, when);
  std::vector<Finding> findings =
      unknown_places(weld, requirement, weld.group, when, hold.hold.low_c - kFarBelowHold_k);
  if (!evaluated) {
    requirement.remarks.push_back(state(Sentence::no_reading));
    hold.add_own_finding(requirement);
    return hold.finish(std::move(requirement));
  }
  set_reading(weld, requirement, *evaluated);
  remark_uncertainty(weld, requirement);
  if (requirement.verdict == Verdict::met && !findings.empty()) {
    requirement.verdict = Verdict::inconclusive;
    requirement.remarks.push_back(state(Sentence::hotter_unseen));
  } else if (requirement.verdict != Verdict::met) {
    if (requirement.verdict == Verdict::not_met) findings.clear();
    for (Finding& place : hot_places(weld, requirement, weld.group, when))
      findings.push_back(std::move(place));
  }
  if (requirement.verdict != Verdict::met)
    weld.out.findings.insert(weld.out.findings.end(), findings.begin(), findings.end());
  hold.finish(std::move(requirement));
}

void evaluate_edge(const HoldCase& hold) {
  Requirement requirement = hold.start(RequirementKind::edge, *hold.specified.edge_fraction_min);
  const double low = hold.specified.low.in(hold.weld.procedure.unit);
  const auto lowest = low == 0.0 ? std::nullopt : lowest_share(hold, requirement, low);
  if (!lowest) {
    requirement.remarks.push_back(
        state(hold.hold.continuous ? Sentence::no_edge_reading : Sentence::no_hold));
  } else {
    if (hold.weld.guard != nullptr)
      set_measured(requirement, lowest->share, lowest->uncertainty);
    else
      set_measured(requirement, lowest->share);
    requirement.channel = hold.weld.name(lowest->reading.trace);
    requirement.at_s = lowest->reading.at_s;
    requirement.verdict = lowest->verdict;
    std::vector<Finding> unknown;
    for (const Span& in_range : hold.hold.in_range)
      for (Finding& place : unknown_places(hold.weld, requirement, hold.weld.edge, in_range, -kNoLevel))
        unknown.push_back(std::move(place));
    if (requirement.verdict == Verdict::met && !unknown.empty()) {
      requirement.verdict = Verdict::inconclusive;
      hold.weld.out.findings.insert(hold.weld.out.findings.end(), unknown.begin(), unknown.end());
    }
    remark_uncertainty(hold.weld, requirement);
    if (!unknown.empty() && requirement.verdict == Verdict::inconclusive)
      requirement.remarks.push_back(state(Sentence::edge_unseen));
  }
  hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

void evaluate_tempering(const HoldCase& hold, RequirementKind kind, double limit) {
  const WeldCase& weld = hold.weld;
  Requirement requirement = hold.start(kind, limit);
  const bool least = requirement.limit_is_least();
  const std::vector<Worth> all = worth_of_group(weld);
  std::optional<std::size_t> worst;
  double worst_held = 0.0;
  bool sure = false;
  bool open = false;
  bool unknown_time = false;
  for (std::size_t member = 0; member < all.size(); ++member) {
    const Worth& worth = all[member];
    if (!worth.parameter) {
      open = true;
      continue;
    }
    if (!worth.least || !worth.most) open = true;
    // What counts against the limit, and what would count for it.
    const double held = (least ? worth.least : worth.most).value_or(*worth.parameter);
    const auto other = least ? worth.most : worth.least;
    if (!worst || (least ? held < worst_held : held > worst_held)) {
      worst = member;
      worst_held = held;
    }
    // More time can only add: a channel short of the least may have had it where it is unknown.
    const bool unknown = worth.unknown_s > kSampleSlack_s || !worth.all_there;
    const bool beyond = beyond_limit(requirement, held);
    const bool surely = other && beyond_limit(requirement, *other);
    if (surely && !(least && unknown)) sure = true;
    if (beyond && !surely) open = true;
    if (unknown && (beyond == least)) open = unknown_time = true;
  }
  if (!worst) {
    requirement.remarks.push_back(state(Sentence::no_reading));
  } else {
    const double parameter = *all[*worst].parameter;
    if (weld.guard != nullptr)
      set_measured(requirement, parameter, std::fabs(worst_held - parameter));
    else
      set_measured(requirement, parameter);
    requirement.channel = all[*worst].channel;
    requirement.verdict = sure ? Verdict::not_met : open ? Verdict::inconclusive : Verdict::met;
    if (!weld.previous_records.empty()) {
      requirement.remarks.push_back(state(Sentence::tempering_over_records));
      if (*worst < weld.group.size())
        if (const auto& alone = weld.ground.temperings[weld.group[*worst]])
          requirement.remarks.push_back(state(Sentence::tempering_alone, Ratio::of(alone->parameter)));
    }
    const double constant = weld.procedure.evaluation.tempering_constant;
    requirement.remarks.push_back(state(
        Sentence::equivalent_time,
        Ratio::of(std::round(equivalent_hours(*requirement.measured, hold.hold.low_c, constant) * 100.0) /
                  100.0),
        Specified{hold.specified.low}, Ratio::of(constant)));
    remark_uncertainty(weld, requirement);
    if (requirement.verdict == Verdict::inconclusive && unknown_time)
      requirement.remarks.push_back(state(Sentence::tempering_unseen));
  }
  hold.add_own_finding(requirement);
  hold.finish(std::move(requirement));
}

}  // namespace soakwright
