// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/draft/rule_list.h"

#include <algorithm>
#include <utility>
#include <variant>

#include "app/cli/printing/page_text.h"
#include "core/units/printed_quantity.h"

namespace soakwright::cli {
namespace {

std::string joined(const std::vector<std::string>& texts, const char* between) {
  std::string out;
  for (const std::string& text : texts) out += (out.empty() ? "" : between) + text;
  return out;
}

void add_once(std::vector<std::string>& texts, std::string text) {
  if (std::find(texts.begin(), texts.end(), text) == texts.end()) texts.push_back(std::move(text));
}

std::string part_of(const RuleStage& one) {
  if (const auto* ramp = std::get_if<RampStage>(&one.stage.specified)) {
    std::string text = ramp->direction == RampStage::Direction::heat ? "heating" : "cooling";
    if (!ramp->rate_max) text += ", spread";
    return text;
  }
  if (std::holds_alternative<MaintainStage>(one.stage.specified)) return "preheat";
  return one.lower_by ? "hold at a lower temperature" : "hold";
}

/// "UCS-56(d): heating, cooling" for each clause, those from memory apart from those seen in print.
std::string clauses(const PublishedRule& rule, Provenance::Flag flag) {
  std::vector<std::pair<std::string, std::vector<std::string>>> found;
  for (const RuleStage& one : rule.stages) {
    const bool nothing_of_the_rule =
        one.hold_is_left_open && !std::get<HoldStage>(one.stage.specified).spread_max;
    if (one.stage.provenance.flag != flag || nothing_of_the_rule) continue;
    std::string clause = one.stage.provenance.clause.value_or(std::string{});
    if (one.stage.provenance.edition != rule.provenance.edition)
      clause += " (edition " + one.stage.provenance.edition.value_or(std::string{}) + ")";
    auto place =
        std::find_if(found.begin(), found.end(), [&](const auto& each) { return each.first == clause; });
    if (place == found.end()) place = found.insert(found.end(), {clause, {}});
    std::string part = one.hold_is_left_open ? "spread in the hold" : part_of(one);
    if (!one.materials.empty() && one.materials.size() < 3 && !one.lower_by)
      part += " of " + joined(one.materials, ", ");
    add_once(place->second, std::move(part));
  }
  std::vector<std::string> texts;
  texts.reserve(found.size());
  for (const auto& [clause, parts] : found) texts.push_back(clause + ": " + joined(parts, ", "));
  return joined(texts, "; ");
}

std::string length(Thickness thickness, const PublishedRule& rule) {
  return rule.unit == TemperatureUnit::fahrenheit ? short_text(thickness.in(LengthUnit::inch), 3) + " in"
                                                  : short_text(thickness.millimetres(), 2) + " mm";
}

std::string thicknesses(const PublishedRule& rule) {
  if (!rule.needs_thickness()) return "does not matter";
  std::string text;
  if (rule.range.from) text = "from " + length(*rule.range.from, rule);
  if (rule.range.above) text = "above " + length(*rule.range.above, rule);
  if (rule.range.to) text += (text.empty() ? "up to " : " to ") + length(*rule.range.to, rule);
  return text.empty() ? "any" : text;
}

std::string lower_temperatures(const PublishedRule& rule) {
  std::vector<std::string> texts;
  for (const RuleStage& one : rule.stages)
    if (one.lower_by)
      add_once(texts, short_text(one.lower_by->in(rule.unit), 2) + " " + degree_text(rule.unit) + ": " +
                          joined(one.materials, ", "));
  return joined(texts, "; ");
}

std::string hold_to_be_given(const PublishedRule& rule) {
  std::vector<std::string> materials;
  bool any = false;
  for (const RuleStage& one : rule.stages) {
    if (!one.hold_is_left_open) continue;
    any = true;
    for (const std::string& material : one.materials) add_once(materials, material);
  }
  if (!any) return {};
  return materials.empty() ? "--hold and --hold-time"
                           : "--hold and --hold-time for " + joined(materials, ", ");
}

}  // namespace

std::string rule_list(const std::vector<PublishedRule>& rules, const PageStyle& style) {
  PageText page(style);
  for (const PublishedRule& rule : rules) {
    page.heading(rule.name);
    const std::pair<const char*, std::string> facts[] = {
        {"Title", rule.title},
        {"Source", rule.provenance.source.value_or(std::string{})},
        {"Edition", rule.provenance.edition.value_or(std::string{})},
        {"Seen in print", clauses(rule, Provenance::Flag::seen)},
        {"From memory, check against your edition", clauses(rule, Provenance::Flag::memory)},
        {"Materials", rule.materials.empty() ? "does not matter" : joined(rule.materials, ", ")},
        {"Thickness", thicknesses(rule)},
        {"Lower temperature (--lower-by)", lower_temperatures(rule)},
        {"To be given", hold_to_be_given(rule)},
        {"Remark", rule.remark.value_or(std::string{})},
        {"File", rule.file}};
    for (const auto& [name, text] : facts)
      if (!text.empty()) page.paragraph({std::string(name)}, text);
  }
  return page.str();
}

}  // namespace soakwright::cli
