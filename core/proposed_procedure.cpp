// SPDX-License-Identifier: GPL-3.0-or-later
// 1. stages from the phases, with limits so wide that nothing can exceed them
// 2. the record evaluated against them: what it measures for each limit
// 3. each limit set to that figure with room to spare, rounded outwards
#include "core/proposed_procedure.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>
#include <variant>

#include "core/analyse.h"
#include "core/procedure/rules/rule_problems.h"

namespace soakwright {
namespace {

// Common practice, no source: ramps are controlled from 300 °C on, and a limit is a round number.
constexpr Temperature kRampsCountFrom = Temperature::of_celsius(300.0);
constexpr double kRoom = 1.1;        ///< a limit is a tenth beyond what was measured
constexpr double kRoundRate = 10.0;  ///< °C/h or °F/h
constexpr double kRoundDegrees = 5.0;
constexpr double kRoundSpread = 10.0;
constexpr double kEdges = 0.05;  ///< of a hold, in which its range may still be crossed

class Proposal {
 public:
  Proposal(const Analysis& analysis, TemperatureUnit unit) : analysis_(analysis), unit_(unit) {
    procedure_.number = "PROPOSAL";
    procedure_.unit = unit;
  }

  Result<Procedure> made() {
    for (const Phase& phase : analysis_.course->phases) add_stage(phase);
    if (procedure_.stages.empty()) return rule_problems::nothing_to_propose(analysis_.record->file);
    set_ramps_from();
    auto measured = evaluate_again(analysis_, std::make_shared<const Procedure>(procedure_));
    if (!measured) return measured.problems();
    set_limits(*measured.value().verdicts);
    return procedure_;
  }

 private:
  [[nodiscard]] Temperature rounded(Temperature point, double (*direction)(double)) const {
    return Temperature::of(direction(point.in(unit_) / kRoundDegrees) * kRoundDegrees, unit_);
  }
  template <typename Value>
  [[nodiscard]] Value with_room(Value measured, double step) const {
    return Value::of(std::max(step, std::ceil(measured.in(unit_)*kRoom / step) * step), unit_);
  }

  void add_stage(const Phase& phase) {
    Stage stage;
    stage.number = procedure_.stages.size() + 1;
    if (phase.kind == Phase::Kind::hold) {
      const auto hold = hold_of(phase);
      if (!hold) return;
      stage.specified = *hold;
    } else if (phase.kind == Phase::Kind::heat || phase.kind == Phase::Kind::cool) {
      RampStage ramp;
      ramp.direction =
          phase.kind == Phase::Kind::heat ? RampStage::Direction::heat : RampStage::Direction::cool;
      // Two ramps of one direction, one after the other, are one stage at two paces.
      const auto* before =
          procedure_.stages.empty() ? nullptr : std::get_if<RampStage>(&procedure_.stages.back().specified);
      if (before && before->direction == ramp.direction) return;
      constexpr double kBeyondAll = 1e5;
      ramp.rate_max = HeatingRate::of_celsius_per_hour(kBeyondAll);
      ramp.spread_max = TemperatureDifference::of_kelvin(kBeyondAll);
      stage.specified = ramp;
    } else {
      return;
    }
    procedure_.stages.push_back(std::move(stage));
  }

  /// The range that all evaluated readings keep between the edges of the phase; nullopt if there are none.
  [[nodiscard]] std::optional<HoldStage> hold_of(const Phase& phase) const {
    const double edge = (phase.end_s - phase.start_s) * kEdges;
    const Record& record = *analysis_.record;
    std::optional<double> low, high;
    for (std::size_t row = record.first_row; row < record.end_row; ++row) {
      const double at_s = record.times_s[row];
      if (at_s < phase.start_s + edge || at_s > phase.end_s - edge) continue;
      for (const Channel& channel : record.channels) {
        const auto celsius = channel.evaluated() ? channel.readings.celsius(row) : std::nullopt;
        if (!celsius) continue;
        low = std::min(low.value_or(*celsius), *celsius);
        high = std::max(high.value_or(*celsius), *celsius);
      }
    }
    if (!low) return std::nullopt;
    HoldStage hold;
    hold.low = rounded(Temperature::of_celsius(*low - 1.0), std::floor);
    hold.high = rounded(Temperature::of_celsius(*high + 1.0), std::ceil);
    hold.time_min = 1.0;
    constexpr double kBeyondAll = 1e5;
    hold.spread_max = TemperatureDifference::of_kelvin(kBeyondAll);
    return hold;
  }

  /// Where a hold is well above it, ramps count from 300 °C on; else from the first reading.
  void set_ramps_from() {
    constexpr double kWellAbove = 100.0;
    bool all_above = false;
    for (const Stage& stage : procedure_.stages)
      if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) {
        const bool above = hold->low.celsius() > kRampsCountFrom.celsius() + kWellAbove;
        all_above = above;
        if (!above) break;
      }
    if (!all_above) return;
    for (Stage& stage : procedure_.stages)
      if (auto* ramp = std::get_if<RampStage>(&stage.specified))
        ramp->above = rounded(kRampsCountFrom, std::floor);
  }

  /// The worst of all welds; nullopt where nothing was measured.
  [[nodiscard]] static std::optional<double> worst(const Verdicts& verdicts, RequirementKind kind,
                                                   std::size_t stage) {
    std::optional<double> found;
    for (const Requirement& one : verdicts.requirements) {
      if (one.kind != kind || one.stage != stage || !one.measured) continue;
      const bool least = one.limit_is_least();
      if (!found || (least ? *one.measured < *found : *one.measured > *found)) found = one.measured;
    }
    return found;
  }

  void set_limits(const Verdicts& verdicts) {
    double hottest = -273.15;
    for (const Channel& channel : analysis_.record->channels)
      if (channel.role != ThermocoupleRole::off) hottest = std::max(hottest, channel.max_c.value_or(hottest));
    procedure_.record_limits.temperature_max = rounded(Temperature::of_celsius(hottest + 10.0), std::ceil);
    for (Stage& stage : procedure_.stages) {
      if (auto* ramp = std::get_if<RampStage>(&stage.specified)) set_ramp(verdicts, stage.number, *ramp);
      if (auto* hold = std::get_if<HoldStage>(&stage.specified)) set_hold(verdicts, stage.number, *hold);
    }
    std::erase_if(procedure_.stages, [](const Stage& stage) {
      const auto* ramp = std::get_if<RampStage>(&stage.specified);
      return ramp && !ramp->rate_max && !ramp->spread_max;
    });
    for (std::size_t i = 0; i < procedure_.stages.size(); ++i) procedure_.stages[i].number = i + 1;
  }

  [[nodiscard]] std::optional<TemperatureDifference> spread_limit(const Verdicts& verdicts,
                                                                  std::size_t stage) const {
    const auto widest = worst(verdicts, RequirementKind::spread, stage);
    if (!widest) return std::nullopt;
    return with_room(TemperatureDifference::of_kelvin(*widest), kRoundSpread);
  }

  void set_ramp(const Verdicts& verdicts, std::size_t number, RampStage& ramp) const {
    const bool heat = ramp.direction == RampStage::Direction::heat;
    const auto kind = heat ? RequirementKind::heating_rate : RequirementKind::cooling_rate;
    std::optional<double> steepest = worst(verdicts, kind, number);
    // A mean over the whole ramp counts too.
    for (const Requirement& one : verdicts.requirements)
      if (steepest && one.kind == kind && one.stage == number)
        for (const auto& [channel, rate] : one.overall) steepest = std::max(*steepest, rate.value_or(0.0));
    ramp.rate_max.reset();
    if (steepest && *steepest > 0.0)
      ramp.rate_max = with_room(HeatingRate::of_celsius_per_hour(*steepest), kRoundRate);
    ramp.spread_max = spread_limit(verdicts, number);
  }

  void set_hold(const Verdicts& verdicts, std::size_t number, HoldStage& hold) const {
    const auto held = worst(verdicts, RequirementKind::hold_time, number);
    hold.time_min.reset();
    if (held) {
      // Down to 5 min, of a short hold to 1 min.
      const double step = *held >= 1800.0 ? 300.0 : 60.0;
      const double seconds = std::floor(*held / kRoom / step) * step;
      if (seconds > 0.0) hold.time_min = seconds;
    }
    if (const auto hottest = worst(verdicts, RequirementKind::over, number);
        hottest && hold.high && *hottest > hold.high->celsius())
      hold.high = rounded(Temperature::of_celsius(*hottest + 1.0), std::ceil);
    hold.spread_max = spread_limit(verdicts, number);
  }

  const Analysis& analysis_;
  TemperatureUnit unit_;
  Procedure procedure_;
};

TemperatureUnit unit_of_log(const Record& record) {
  for (const Channel& channel : record.channels)
    if (channel.evaluated())
      return channel.unit == ChannelUnit::fahrenheit ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
  return TemperatureUnit::celsius;
}

}  // namespace

Result<Procedure> proposed_procedure(const Analysis& analysis, std::optional<TemperatureUnit> unit) {
  return Proposal{analysis, unit.value_or(unit_of_log(*analysis.record))}.made();
}

}  // namespace soakwright
