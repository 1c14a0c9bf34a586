// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/draft.h"

#include <algorithm>
#include <utility>
#include <variant>

#include "core/problems/caught.h"
#include "core/procedure/procedure_file.h"
#include "core/procedure/procedure_text.h"
#include "core/procedure/rules/rule_draft.h"
#include "core/procedure/rules/rule_problems.h"
#include "core/proposed_procedure.h"
#include "core/units/duration_text.h"
#include "core/units/number_text.h"
#include "core/wording/draft_comments.h"

namespace soakwright {
namespace {

/// "600-640", "600": the dash stands between the numbers, a minus sign before one.
Result<OpenHold> open_hold(const std::string& range, const std::string& time, TemperatureUnit unit) {
  const std::size_t dash = range.find('-', 1);
  const auto low = parse_number(trimmed(std::string_view{range}.substr(0, dash)));
  std::optional<double> high;
  if (dash != std::string::npos) high = parse_number(trimmed(std::string_view{range}.substr(dash + 1)));
  if (!low || (dash != std::string::npos && !high)) return rule_problems::hold_unreadable(range);
  if (high && !(*low < *high)) return rule_problems::hold_upside_down(range);
  const auto seconds = parse_duration(time);
  if (!seconds || !(*seconds > 0.0)) return rule_problems::hold_time_unreadable(time);
  OpenHold hold;
  hold.low = Temperature::of(*low, unit);
  if (high) hold.high = Temperature::of(*high, unit);
  hold.time_min_s = *seconds;
  return hold;
}

/// The material as the rule writes it.
std::string material_of(const PublishedRule& rule, const std::string& material) {
  for (const std::string& one : rule.materials)
    if (same_material(one, material)) return one;
  return {};
}

/// Everything but where it came from.
bool same_limits(const Procedure& a, const Procedure& b) {
  return a.number == b.number && a.title == b.title && a.unit == b.unit && a.thickness == b.thickness &&
         a.provenance == b.provenance && a.evaluation == b.evaluation && a.record_limits == b.record_limits &&
         std::equal(a.stages.begin(), a.stages.end(), b.stages.begin(), b.stages.end(),
                    [](const Stage& one, const Stage& other) {
                      return one.provenance == other.provenance && one.specified == other.specified;
                    });
}

/// A draft that reads back to something else would be evaluated as something else.
Result<std::string> checked_text(const Procedure& procedure, const ProcedureComments& comments) {
  std::string text = procedure_text(procedure, comments);
  const auto back = parse_procedure(text, procedure.number);
  if (!back) return rule_problems::draft_not_readable(back.problems().front().text());
  if (!same_limits(back.value(), procedure)) return rule_problems::draft_not_readable(procedure.number);
  return text;
}

Result<std::string> drafted(const RuleShelf& shelf, const DraftRequest& request) {
  if (!shelf.problems.empty()) return shelf.problems;
  const auto rule = std::find_if(shelf.rules.begin(), shelf.rules.end(),
                                 [&](const PublishedRule& one) { return one.name == request.rule; });
  if (rule == shelf.rules.end()) {
    std::vector<std::string> names;
    for (const PublishedRule& one : shelf.rules) names.push_back(one.name);
    return rule_problems::no_such_rule(request.rule, names);
  }
  const TemperatureUnit unit = request.unit.value_or(rule->unit);
  DraftChoices choices{request.thickness, request.material, std::nullopt, std::nullopt};
  if (request.lower_by) choices.lower_by = TemperatureDifference::of(*request.lower_by, rule->unit);
  if (!request.hold.empty() || !request.hold_time.empty()) {
    auto hold = open_hold(request.hold, request.hold_time, unit);
    if (!hold) return hold.problems();
    choices.hold = hold.value();
  }
  auto draft = draft_from(*rule, choices);
  if (!draft) return draft.problems();
  Procedure& procedure = draft.value().procedure;
  procedure.unit = unit;
  ProcedureComments comments;
  comments.head = drafted_head(*rule, material_of(*rule, request.material));
  comments.record = record_comments(procedure, false);
  for (std::size_t i = 0; i < procedure.stages.size(); ++i) {
    Stage& stage = procedure.stages[i];
    const DraftedStage& facts = draft.value().stages[i];
    if (facts.hold_by_user)
      stage.provenance.source = given_hold_source(*rule, stage.provenance.source.has_value());
    comments.stages.push_back(stage_comments(procedure, stage, facts));
  }
  return checked_text(procedure, comments);
}

Result<std::string> proposed(const Analysis& analysis, std::optional<TemperatureUnit> unit) {
  // By itself: previous records, a review and another procedure's verdicts say nothing of this record's
  // limits.
  Analysis alone;
  alone.record = analysis.record;
  alone.course = analysis.course;
  alone.job = analysis.job;
  auto made = proposed_procedure(alone, unit);
  if (!made) return made.problems();
  Procedure& procedure = made.value();
  const std::string& log = analysis.record->file;
  procedure.title = proposal_title(log);
  const Provenance provenance{proposal_source(), std::nullopt, std::nullopt, Provenance::Flag::proposal};
  procedure.provenance = provenance;
  ProcedureComments comments;
  comments.head = proposed_head(log);
  comments.record = record_comments(procedure, true);
  for (Stage& stage : procedure.stages) {
    stage.provenance = provenance;
    comments.stages.push_back(stage_comments(procedure, stage, {}));
  }
  return checked_text(procedure, comments);
}

}  // namespace

Result<std::string> draft_procedure(const RuleShelf& shelf, const DraftRequest& request) {
  return caught(request.rule, [&] { return drafted(shelf, request); });
}

Result<std::string> propose_procedure(const Request& request, std::optional<TemperatureUnit> unit) {
  const auto found = inspect(request);
  return found ? propose_procedure(found.value(), unit) : found.problems();
}

Result<std::string> propose_procedure(const Analysis& analysis, std::optional<TemperatureUnit> unit) {
  return caught(analysis.record->file, [&] { return proposed(analysis, unit); });
}

}  // namespace soakwright
