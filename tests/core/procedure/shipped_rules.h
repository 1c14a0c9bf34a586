// SPDX-License-Identifier: GPL-3.0-or-later
// The published rules of this source tree, and drafts from them.
#pragma once

#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "core/procedure/rules/rule_draft.h"
#include "core/procedure/rules/rule_file.h"
#include "tests/core/procedure/refusals.h"

namespace soakwright {

inline const RuleShelf& shipped_rules() {
  static const RuleShelf shelf = read_rule_folders({SOAKWRIGHT_SOURCE_DIR "/resources/rules"});
  return shelf;
}

inline const PublishedRule& shipped_rule(const std::string& name) {
  for (const PublishedRule& rule : shipped_rules().rules)
    if (rule.name == name) return rule;
  FAIL("no rule " << name);
  return shipped_rules().rules.front();
}

inline Thickness inches(double value) { return Thickness::of(value, LengthUnit::inch); }
inline Thickness mm(double value) { return Thickness::of(value, LengthUnit::millimetre); }

/// The procedure for a thickness and material, or what is wrong with them.
inline Result<Draft> draft_of(const std::string& rule, Thickness thickness, const std::string& material = {},
                              std::optional<double> lower_by = std::nullopt) {
  const PublishedRule& found = shipped_rule(rule);
  DraftChoices choices{thickness, material, std::nullopt, std::nullopt};
  if (lower_by) choices.lower_by = TemperatureDifference::of(*lower_by, found.unit);
  if (std::any_of(found.stages.begin(), found.stages.end(),
                  [&](const RuleStage& one) { return one.hold_is_left_open && applies_to(one, material); }))
    choices.hold = OpenHold{Temperature::of_celsius(580.0), Temperature::of_celsius(590.0), 5400.0};
  return draft_from(found, choices);
}

inline HoldStage hold_of(const Procedure& procedure) {
  for (const Stage& stage : procedure.stages)
    if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) return *hold;
  throw std::runtime_error("no hold");
}

/// The steepest rate allowed, in the core's unit.
inline double rate_of(const Procedure& procedure, RampStage::Direction direction) {
  for (const Stage& stage : procedure.stages) {
    const auto* ramp = std::get_if<RampStage>(&stage.specified);
    if (ramp && ramp->direction == direction && ramp->rate_max)
      return limit_at(*ramp->rate_max, procedure.thickness).value().celsius_per_hour();
  }
  throw std::runtime_error("no rate");
}
inline double minutes_of(const Procedure& procedure) {
  return limit_at(hold_of(procedure).time_min.value(), procedure.thickness).value() / 60.0;
}

}  // namespace soakwright
