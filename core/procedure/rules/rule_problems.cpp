// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/rules/rule_problems.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"
#include "core/units/number_text.h"
#include "core/units/printed_quantity.h"

namespace soakwright::rule_problems {
namespace {

std::string joined(const std::vector<std::string>& names) {
  std::string out;
  for (const std::string& name : names) out += (out.empty() ? "" : ", ") + name;
  return out;
}

Problem usage(std::string what, std::string help) {
  return {ProblemKind::usage, {}, 0, std::move(what), std::move(help)};
}
Problem bad_input(std::string what, std::string help) {
  return {ProblemKind::bad_input, {}, 0, std::move(what), std::move(help)};
}

std::string in_mm(Thickness thickness) { return short_text(thickness.millimetres(), 4) + " mm"; }

std::string range_text(const ThicknessRange& range) {
  std::string text;
  if (range.from) text = "from " + in_mm(*range.from);
  if (range.above) text = "above " + in_mm(*range.above);
  if (range.to) text += (text.empty() ? "up to " : " to ") + in_mm(*range.to);
  return text.empty() ? "any" : text;
}

/// "from 3 mm to 20 mm; above 20 mm to 38 mm": each once.
std::string ranges_of(const PublishedRule& rule) {
  std::vector<std::string> found;
  const auto add = [&](const ThicknessRange& range) {
    if (!range.bounded()) return;
    const std::string text = range_text(range);
    if (std::find(found.begin(), found.end(), text) == found.end()) found.push_back(text);
  };
  add(rule.range);
  for (const RuleStage& one : rule.stages) add(one.range);
  std::string out;
  for (const std::string& text : found) out += (out.empty() ? "" : "; ") + text;
  return out;
}

}  // namespace

ProblemWords not_a_list_of_names(const FoundValue& found) {
  return {fmt::format("`{}` is {}", found.name, described(found.value)),
          R"(write a list of names: ["P-No. 1", "P-No. 3"])"};
}

ProblemWords bad_name(const FoundValue& found) {
  return {fmt::format("`{0}` has a letter that a rule's {0} cannot have", found.name),
          "use small letters, digits and dashes: \"asme-viii-1-ucs-56\""};
}

ProblemWords unknown_material(const std::string& material, const std::vector<std::string>& known) {
  return {fmt::format("\"{}\" is not one of the rule's materials", shown(material)),
          known.empty() ? "list them with `materials` at the head of the rule" : suggestion(material, known)};
}

ProblemWords material_without_stage(const std::string& material) {
  return {fmt::format("no stage of its own is given for the material \"{}\"", shown(material)),
          "name it in the `material` of a stage, or leave it out of `materials`"};
}

ProblemWords empty_thickness_range() {
  return {"the thickness range has nothing in it", "give a `thickness_to` above the lower bound"};
}

ProblemWords two_lower_bounds() {
  return {"`thickness_from` and `thickness_above` are both given",
          "`thickness_from` includes its value, `thickness_above` does not: keep one"};
}

ProblemWords lower_by_of_no_hold() {
  return {"`lower_by` is given for a stage that is no hold with a range of its own",
          "give it in the hold that is used at the lower temperature"};
}

ProblemWords no_stage() { return {"the rule has no stage", "add at least one [[stage]]"}; }

ProblemWords hold_beside_open_hold() {
  return {"one material has a hold of the rule and a given hold",
          "a given hold is for a rule that leaves temperature and time to the user: keep one of them"};
}

Problem folder_not_readable(const std::string& folder) {
  return {ProblemKind::cannot_open, folder, 0, "the folder of rules cannot be read",
          "name a folder with rules as .toml files"};
}

Problem two_of_one_name(const std::string& name, const std::string& first, const std::string& second) {
  return {ProblemKind::bad_input, second, 0, fmt::format("the rule \"{}\" is in {} too", name, first),
          "give one of them another `name`"};
}

Problem no_such_rule(const std::string& name, const std::vector<std::string>& names) {
  return usage(fmt::format("there is no rule \"{}\"", shown(name)), suggestion(name, names));
}

Problem thickness_missing(const PublishedRule& rule) {
  return usage(fmt::format("{} depends on the thickness, but no thickness is given", rule.name),
               "add --thickness \"38 mm\" or --thickness \"1.5 in\"");
}

Problem thickness_not_covered(const PublishedRule& rule, Thickness thickness) {
  return bad_input(fmt::format("{} does not cover a thickness of {}", rule.name, in_mm(thickness)),
                   fmt::format("its thicknesses: {}; nothing is extrapolated", ranges_of(rule)));
}

Problem material_missing(const PublishedRule& rule) {
  return usage(fmt::format("{} depends on the material, but no material is given", rule.name),
               fmt::format("add --material with one of: {}", joined(rule.materials)));
}

Problem material_not_covered(const PublishedRule& rule, const std::string& material) {
  return bad_input(fmt::format("{} does not cover the material \"{}\"", rule.name, shown(material)),
                   fmt::format("its materials: {}", joined(rule.materials)));
}

Problem material_not_needed(const PublishedRule& rule) {
  return usage(fmt::format("{} does not depend on the material", rule.name), "leave out --material");
}

Problem lower_by_not_covered(const PublishedRule& rule, const std::string& material, double lower_by) {
  std::vector<std::string> known;
  for (const RuleStage& one : rule.stages)
    if (one.lower_by && applies_to(one, material)) {
      std::string text = short_text(one.lower_by->in(rule.unit), 3);
      if (std::find(known.begin(), known.end(), text) == known.end()) known.push_back(std::move(text));
    }
  const std::string degree = degree_text(rule.unit);
  const std::string by = short_text(lower_by, 3) + " " + degree;
  if (known.empty())
    return bad_input(material.empty()
                         ? fmt::format("{} has no hold that is {} lower", rule.name, by)
                         : fmt::format("{} has no hold that is {} lower for {}", rule.name, by, material),
                     "leave out --lower-by");
  if (material.empty())
    return bad_input(fmt::format("{} has no hold that is {} lower", rule.name, by),
                     fmt::format("known: {} {}", joined(known), degree));
  return bad_input(fmt::format("{} has no hold that is {} lower for {}", rule.name, by, material),
                   fmt::format("known for {}: {} {}", material, joined(known), degree));
}

Problem hold_missing(const PublishedRule& rule, const std::string& material) {
  return usage(
      material.empty() ? fmt::format("{} gives no holding temperature and time", rule.name)
                       : fmt::format("{} gives no holding temperature and time for {}", rule.name, material),
      fmt::format("add --hold and --hold-time from your qualified procedure: --hold {} --hold-time \"2 h\"",
                  rule.unit == TemperatureUnit::fahrenheit ? "1100-1200" : "600-640"));
}

Problem hold_not_needed(const PublishedRule& rule, const std::string& material) {
  return usage(material.empty() ? fmt::format("{} has a hold of its own", rule.name)
                                : fmt::format("{} has a hold of its own for {}", rule.name, material),
               "leave out --hold and --hold-time, and edit the draft where your procedure is stricter");
}

Problem hold_too_hot(const PublishedRule& rule, Temperature highest) {
  return bad_input(fmt::format("{} allows at most {} {} in this hold", rule.name,
                               short_text(highest.in(rule.unit), 3), degree_text(rule.unit)),
                   "give an upper temperature that is not above it: --hold 1050-1100");
}

Problem hold_unreadable(const std::string& text) {
  return usage(
      fmt::format("--hold \"{}\" is no temperature range", shown(text)),
      "write the range in the unit of the draft: --hold 600-640, or --hold 600 without an upper limit");
}

Problem hold_time_unreadable(const std::string& text) {
  return usage(fmt::format("--hold-time \"{}\" is no duration above 0", shown(text)),
               R"(write --hold-time "90 min" or "1 h 35 min")");
}

Problem hold_upside_down(const std::string& text) {
  return usage(fmt::format("the range --hold \"{}\" has its lower limit above its upper limit", shown(text)),
               "have they changed places?");
}

Problem nothing_to_propose(const std::string& log) {
  return {ProblemKind::bad_input, log, 0, "the log shows no heating, hold or cooling to propose limits from",
          "write the procedure by hand, or draft it from a rule"};
}

Problem draft_not_readable(const std::string& reason) {
  return {ProblemKind::fault,
          {},
          0,
          "the draft does not read back as it was made: " + reason,
          "please report it, with the rule"};
}

}  // namespace soakwright::rule_problems
