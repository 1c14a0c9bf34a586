// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/rules/published_rule.h"

#include <algorithm>
#include <variant>

namespace soakwright {
namespace {

std::string letters_and_digits(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') out += static_cast<char>(c - 'A' + 'a');
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) out += c;
  }
  return out;
}

bool has_thickness_rule(const Stage& stage) {
  if (const auto* ramp = std::get_if<RampStage>(&stage.specified))
    return ramp->rate_max && std::holds_alternative<RateRule>(*ramp->rate_max);
  if (const auto* hold = std::get_if<HoldStage>(&stage.specified))
    return hold->time_min && std::holds_alternative<TimeRule>(*hold->time_min);
  return false;
}

}  // namespace

bool ThicknessRange::contains(Thickness thickness) const {
  return !(from && thickness < *from) && !(above && thickness <= *above) && !(to && *to < thickness);
}

bool PublishedRule::hold_is_left_open() const {
  return std::any_of(stages.begin(), stages.end(),
                     [](const RuleStage& one) { return one.hold_is_left_open; });
}

bool PublishedRule::needs_thickness() const {
  return range.bounded() || std::any_of(stages.begin(), stages.end(), [](const RuleStage& one) {
           return one.range.bounded() || has_thickness_rule(one.stage);
         });
}

bool same_material(const std::string& a, const std::string& b) {
  return letters_and_digits(a) == letters_and_digits(b);
}

bool applies_to(const RuleStage& stage, const std::string& material) {
  return stage.materials.empty() ||
         std::any_of(stage.materials.begin(), stage.materials.end(),
                     [&](const std::string& one) { return same_material(one, material); });
}

}  // namespace soakwright
