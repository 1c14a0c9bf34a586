// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/shortfall.h"

#include <algorithm>
#include <cmath>

#include "core/measure/tempering.h"
#include "core/measure/traces/trace.h"

namespace soakwright {
namespace {

/// One requirement and how far it is from being met.
class Shortfall {
 public:
  Shortfall(const Procedure& procedure, const Requirement& requirement)
      : procedure_(procedure), requirement_(requirement) {}

  [[nodiscard]] Statements find() const {
    if (requirement_.verdict == Verdict::met) return {};
    if (requirement_.kind == RequirementKind::hold_time) return of_hold_time();
    if (requirement_.kind == RequirementKind::calibration)
      return {state(requirement_.measured ? Sentence::shortfall_certificates : Sentence::shortfall_dates)};
    if (Statements overall = overall_too_fast(); !overall.empty()) return overall;
    if (!requirement_.measured) return {not_measured()};
    // Within the limit as far as the record shows: what is missing is the rest of it.
    if (!requirement_.margin) return {state(Sentence::shortfall_tolerance)};
    if (*requirement_.margin >= 0.0) return {state(Sentence::shortfall_rest_of_record)};
    Statements all{beyond_limit_by()};
    if (requirement_.uncertainty) all.push_back(state(Sentence::shortfall_with_uncertainty));
    return all;
  }

 private:
  /// How far it is beyond the limit, in the core's unit.
  [[nodiscard]] double by() const { return -*requirement_.margin; }
  [[nodiscard]] Quantity by_quantity() const {
    return quantity_of(difference_kind(requirement_.quantity()), by());
  }
  /// What was measured is beyond the limit, but noise or uncertainty may explain it.
  [[nodiscard]] bool is_open() const { return requirement_.verdict == Verdict::inconclusive; }
  /// The channel that the requirement names; empty where it names none.
  [[nodiscard]] std::string name() const { return requirement_.channel.value_or(std::string{}); }
  [[nodiscard]] AtMoment moment() const { return {requirement_.at_s.value_or(0.0)}; }
  [[nodiscard]] double window_s() const {
    return requirement_.to_s.value_or(0.0) - requirement_.from_s.value_or(0.0);
  }
  [[nodiscard]] const HoldStage* hold() const {
    if (requirement_.stage == 0 || requirement_.stage > procedure_.stages.size()) return nullptr;
    return std::get_if<HoldStage>(&procedure_.stages[requirement_.stage - 1].asked);
  }

  [[nodiscard]] Statement not_measured() const {
    switch (requirement_.kind) {
      case RequirementKind::maintain:
        return state(Sentence::shortfall_period);
      case RequirementKind::over:
      case RequirementKind::excursion_time:
        return state(Sentence::shortfall_no_hold);
      case RequirementKind::edge:
        return state(Sentence::shortfall_edge_readings);
      default:
        return state(Sentence::shortfall_not_in_record);
    }
  }

  [[nodiscard]] Statement beyond_limit_by() const {
    switch (requirement_.kind) {
      case RequirementKind::temperature_max:
      case RequirementKind::start:
      case RequirementKind::end:
      case RequirementKind::over:
        return state(Sentence::shortfall_too_hot, name(), by_quantity(), moment());
      case RequirementKind::spread:
        return state(Sentence::shortfall_spread, name(), requirement_.channel_2.value_or(std::string{}),
                     by_quantity(), moment());
      case RequirementKind::heating_rate:
        return steep_window(is_open() ? Sentence::shortfall_heating_open : Sentence::shortfall_heated_fast);
      case RequirementKind::cooling_rate:
        return steep_window(is_open() ? Sentence::shortfall_cooling_open : Sentence::shortfall_cooled_fast);
      case RequirementKind::heating_rate_min:
      case RequirementKind::cooling_rate_min:
        return slow_ramp();
      case RequirementKind::hold_time_max:
        return state(Sentence::shortfall_hold_long, name(), by_quantity());
      case RequirementKind::excursion_time:
        return state(Sentence::shortfall_excursions, by_quantity());
      case RequirementKind::maintain:
        return state(Sentence::shortfall_preheat, by_quantity());
      case RequirementKind::gap:
        return state(Sentence::shortfall_gap, by_quantity());
      case RequirementKind::interval:
        return state(Sentence::shortfall_interval, by_quantity());
      case RequirementKind::thermocouples:
        return state(Sentence::shortfall_thermocouples, by_quantity());
      case RequirementKind::edge:
        return cold_edge();
      case RequirementKind::tempering_min:
        return tempering(Sentence::shortfall_little_tempering);
      case RequirementKind::tempering_max:
        return tempering(Sentence::shortfall_much_tempering);
      case RequirementKind::hold_time:
      case RequirementKind::calibration:
        break;
    }
    return {};
  }

  /// What the limit leaves for the window, as a temperature difference over its time.
  [[nodiscard]] Statement steep_window(Sentence sentence) const {
    const double hours = window_s() / 3600.0;
    const double allowed = std::max(0.0, *requirement_.measured - by());
    return state(sentence, name(), by_quantity(),
                 TemperatureDifference::of_kelvin(*requirement_.measured * hours),
                 Duration::of_seconds(window_s()), TemperatureDifference::of_kelvin(allowed * hours));
  }

  /// Where no window is above the limit, and the mean over the whole ramp is; empty otherwise.
  [[nodiscard]] Statements overall_too_fast() const {
    const bool rate = requirement_.kind == RequirementKind::heating_rate ||
                      requirement_.kind == RequirementKind::cooling_rate;
    const bool window_above = requirement_.margin && *requirement_.margin < 0.0;
    if (!rate || requirement_.verdict != Verdict::not_met || window_above) return {};
    const std::pair<std::string, std::optional<double>>* fastest = nullptr;
    for (const auto& channel : requirement_.overall)
      if (channel.second && (fastest == nullptr || *channel.second > *fastest->second)) fastest = &channel;
    if (fastest == nullptr || *fastest->second <= requirement_.limit) return {};
    return {
        state(Sentence::shortfall_fast_overall, fastest->first,
              quantity_of(difference_kind(requirement_.quantity()), *fastest->second - requirement_.limit))};
  }

  [[nodiscard]] Statement slow_ramp() const {
    const double required = *requirement_.measured + by();
    return state(Sentence::shortfall_slow_ramp, name(), Duration::of_seconds(window_s()),
                 Duration::of_seconds(window_s() * *requirement_.measured / required));
  }

  [[nodiscard]] Statement cold_edge() const {
    const HoldStage* required = hold();
    const double low = required != nullptr ? std::fabs(required->low.in(procedure_.unit)) : 0.0;
    return state(Sentence::shortfall_edge_cold, name(),
                 TemperatureDifference::of(by() * low, procedure_.unit), moment());
  }

  /// In hours of equivalent time, which say more than the parameter.
  [[nodiscard]] Statement tempering(Sentence sentence) const {
    const HoldStage* required = hold();
    const Temperature low = required != nullptr ? required->low : Temperature{};
    const double limit = *requirement_.measured + (requirement_.limit_is_least() ? by() : -by());
    const double constant = procedure_.evaluation.tempering_constant;
    const double hours = std::fabs(equivalent_hours(limit, low.celsius(), constant) -
                                   equivalent_hours(*requirement_.measured, low.celsius(), constant));
    return state(sentence, name(), Ratio::of(std::round(hours * 100.0) / 100.0), Specified{low});
  }

  [[nodiscard]] Statements of_hold_time() const {
    const double missing_s = requirement_.limit - requirement_.measured.value_or(0.0);
    if (!requirement_.from_s || !requirement_.to_s)
      return {state(Sentence::shortfall_never_together, Duration::of_seconds(requirement_.limit))};
    Statements all;
    if (missing_s <= kSampleSlack_s)
      return {
          state(Sentence::shortfall_without_excursions,
                Duration::of_seconds(requirement_.limit - requirement_.without_excursions_s.value_or(0.0)))};
    const Duration missing = Duration::of_seconds(missing_s);
    if (requirement_.verdict == Verdict::not_met)
      all.push_back(state(Sentence::shortfall_hold, missing));
    else if (requirement_.possible_s)
      all.push_back(
          state(Sentence::shortfall_hold_certain, missing, Duration::of_seconds(*requirement_.possible_s)));
    else
      all.push_back(state(Sentence::shortfall_hold_open, missing));
    if (requirement_.started_by)
      all.push_back(
          state(Sentence::shortfall_clock_started, AtMoment{*requirement_.from_s}, *requirement_.started_by));
    if (requirement_.stopped_by)
      all.push_back(
          state(Sentence::shortfall_clock_stopped, AtMoment{*requirement_.to_s}, *requirement_.stopped_by));
    add_excursion_allowed(all);
    return all;
  }

  /// The smallest excursion allowed of those shown with which the hold time is met. Adds nothing if it would
  /// have to be deeper than the procedure allows, or than the range is wide.
  void add_excursion_allowed(Statements& all) const {
    const HoldStage* required = hold();
    const bool adds_up = required != nullptr && required->count == HoldStage::Count::accumulated;
    for (const HoldAlternative& alternative : requirement_.alternatives.holds) {
      if (alternative.excursion_allowed_s <= procedure_.evaluation.excursion_allowed.time_s ||
          alternative.verdict != Verdict::met || alternative.deepest_k > deepest_offered(required))
        continue;
      all.push_back(
          state(Sentence::shortfall_excursion_allowed, Duration::of_seconds(alternative.excursion_allowed_s),
                TemperatureDifference::of_kelvin(alternative.deepest_k),
                Duration::of_seconds(adds_up ? alternative.accumulated_s : alternative.continuous_s)));
      return;
    }
  }
  [[nodiscard]] double deepest_offered(const HoldStage* required) const {
    if (procedure_.evaluation.excursion_allowed.depth)
      return procedure_.evaluation.excursion_allowed.depth->kelvin() + kTemperatureSlack;
    return required != nullptr && required->high ? (*required->high - required->low).kelvin() : 0.0;
  }

  const Procedure& procedure_;
  const Requirement& requirement_;
};

}  // namespace

Statements shortfall(const Procedure& procedure, const Requirement& requirement) {
  return Shortfall(procedure, requirement).find();
}

}  // namespace soakwright
