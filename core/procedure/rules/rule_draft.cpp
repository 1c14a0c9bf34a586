// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/rules/rule_draft.h"

#include <algorithm>
#include <set>
#include <utility>
#include <variant>

#include "core/procedure/rules/rule_problems.h"

namespace soakwright {
namespace {

bool is_hold(const RuleStage& one) {
  return !one.hold_is_left_open && std::holds_alternative<HoldStage>(one.stage.specified);
}

/// Whether the choice between usual and lower temperature takes this stage.
bool temperature_chosen(const RuleStage& one, const DraftChoices& choices) {
  return !is_hold(one) || one.lower_by == choices.lower_by;
}

/// What a stage is in the heat treatment: of those with bounds on the thickness, one of each kind must match.
std::size_t place_of(const RuleStage& one) {
  const auto* const ramp = std::get_if<RampStage>(&one.stage.specified);
  const bool cool = ramp && ramp->direction == RampStage::Direction::cool;
  return one.stage.specified.index() * 2 + (cool ? 1 : 0);
}

Problems wrong_material(const PublishedRule& rule, const DraftChoices& choices) {
  if (rule.materials.empty())
    return choices.material.empty() ? Problems{} : Problems{rule_problems::material_not_needed(rule)};
  if (choices.material.empty()) return {rule_problems::material_missing(rule)};
  const bool known = std::any_of(rule.materials.begin(), rule.materials.end(), [&](const std::string& one) {
    return same_material(one, choices.material);
  });
  return known ? Problems{} : Problems{rule_problems::material_not_covered(rule, choices.material)};
}

Problems wrong_hold(const PublishedRule& rule, const std::vector<const RuleStage*>& chosen,
                    const DraftChoices& choices) {
  const auto open =
      std::find_if(chosen.begin(), chosen.end(), [](const RuleStage* one) { return one->hold_is_left_open; });
  if (open == chosen.end())
    return choices.hold ? Problems{rule_problems::hold_not_needed(rule, choices.material)} : Problems{};
  if (!choices.hold) return {rule_problems::hold_missing(rule, choices.material)};
  const auto& highest = (*open)->highest_of_open_hold;
  if (highest && (!choices.hold->high || *highest < *choices.hold->high))
    return {rule_problems::hold_too_hot(rule, *highest)};
  return {};
}

/// The limits of a stage as plain numbers.
void work_out(Stage& stage, Thickness thickness) {
  if (auto* ramp = std::get_if<RampStage>(&stage.specified); ramp && ramp->rate_max)
    ramp->rate_max = limit_at(*ramp->rate_max, thickness).value_or(HeatingRate{});
  if (auto* hold = std::get_if<HoldStage>(&stage.specified); hold && hold->time_min)
    hold->time_min = limit_at(*hold->time_min, thickness).value_or(0.0);
}

void add_stage(const RuleStage& one, const DraftChoices& choices, Draft& draft) {
  Stage stage = one.stage;
  stage.number = draft.procedure.stages.size() + 1;
  DraftedStage drafted;
  drafted.remark = one.remark;
  drafted.lower_by = one.lower_by;
  if (one.hold_is_left_open) {
    auto& hold = std::get<HoldStage>(stage.specified);
    hold.low = choices.hold->low;
    hold.high = choices.hold->high;
    hold.time_min = choices.hold->time_min_s;
    drafted.hold_by_user = true;
    // Range and time are not the rule's; only a limit on the spread may be.
    if (!hold.spread_max) stage.provenance = {};
  }
  if (one.range.bounded() && choices.thickness) {
    work_out(stage, *choices.thickness);
    drafted.worked_out_for = choices.thickness;
  }
  draft.procedure.stages.push_back(std::move(stage));
  draft.stages.push_back(std::move(drafted));
}

std::string capitals(std::string name) {
  for (char& c : name)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return name;
}

}  // namespace

Result<Draft> draft_from(const PublishedRule& rule, const DraftChoices& choices) {
  if (Problems wrong = wrong_material(rule, choices); !wrong.empty()) return wrong;
  std::vector<const RuleStage*> of_material;
  for (const RuleStage& one : rule.stages)
    if (applies_to(one, choices.material)) of_material.push_back(&one);
  const bool lower_known =
      !choices.lower_by || std::any_of(of_material.begin(), of_material.end(), [&](const RuleStage* one) {
        return is_hold(*one) && one->lower_by == choices.lower_by;
      });
  if (!lower_known)
    return rule_problems::lower_by_not_covered(rule, choices.material, choices.lower_by->in(rule.unit));
  if (!choices.thickness && rule.needs_thickness()) return rule_problems::thickness_missing(rule);
  if (choices.thickness && !rule.range.contains(*choices.thickness))
    return rule_problems::thickness_not_covered(rule, *choices.thickness);

  std::vector<const RuleStage*> chosen;
  std::set<std::size_t> places, covered;
  for (const RuleStage* one : of_material) {
    if (!temperature_chosen(*one, choices)) continue;
    places.insert(place_of(*one));
    if (choices.thickness && !one->range.contains(*choices.thickness)) continue;
    covered.insert(place_of(*one));
    chosen.push_back(one);
  }
  if (covered != places) return rule_problems::thickness_not_covered(rule, *choices.thickness);
  if (Problems wrong = wrong_hold(rule, chosen, choices); !wrong.empty()) return wrong;

  Draft draft;
  draft.procedure.number = "DRAFT-" + capitals(rule.name);
  draft.procedure.title = rule.title;
  draft.procedure.unit = rule.unit;
  draft.procedure.thickness = choices.thickness;
  draft.procedure.provenance = rule.provenance;
  draft.procedure.record_limits = rule.record_limits;
  for (const RuleStage* one : chosen) add_stage(*one, choices, draft);
  return draft;
}

}  // namespace soakwright
