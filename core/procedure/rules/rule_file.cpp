// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/rules/rule_file.h"

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>

#include "core/procedure/procedure_tables.h"
#include "core/procedure/rules/rule_problems.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/text_file.h"
#include "core/procedure/toml/value_readers.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

constexpr const char* kOpenHold = "given-hold";

void complain(TableReader& in, std::string_view key, ProblemWords words) {
  in.complain(in.line_of(key), std::move(words));
}

std::optional<std::string> rule_name(const FoundValue& found) {
  const auto name = name_text(found);
  if (!name) return std::nullopt;
  const auto allowed = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
  if (std::all_of(name->begin(), name->end(), allowed)) return name;
  return found.refuse(rule_problems::bad_name(found));
}

std::optional<std::vector<std::string>> names(const FoundValue& found) {
  const auto* const list = found.value.as<TomlArray>();
  if (!list || list->values.empty()) return found.refuse(rule_problems::not_a_list_of_names(found));
  std::vector<std::string> out;
  for (const TomlValue& item : list->values) {
    const auto name = name_text({item, found.name, found.complaints});
    if (!name) return std::nullopt;
    out.push_back(*name);
  }
  return out;
}

/// Complains where the key, read already, is missing.
void must_be_there(TableReader& in, std::string_view key) {
  std::string unread;
  if (!in.entry(key)) in.must(key, text, unread);
}

void read_range(TableReader& in, ThicknessRange& range) {
  in.may("thickness_from", thickness, range.from);
  in.may("thickness_above", thickness, range.above);
  in.may("thickness_to", thickness, range.to);
  if (range.from && range.above) complain(in, "thickness_above", rule_problems::two_lower_bounds());
  const bool empty =
      range.to && ((range.from && *range.to < *range.from) || (range.above && *range.to <= *range.above));
  if (empty) complain(in, "thickness_to", rule_problems::empty_thickness_range());
}

/// Source, edition and clause may be said once for the whole rule; the flag is each stage's own.
void read_stage_provenance(TableReader& in, const Provenance& of_rule, Provenance& provenance) {
  if (!provenance.source) provenance.source = of_rule.source;
  if (!provenance.edition) provenance.edition = of_rule.edition;
  if (!provenance.clause) provenance.clause = of_rule.clause;
  must_be_there(in, "flag");
}

void read_open_hold(TableReader& in, InUnit unit, RuleStage& one) {
  std::string kind;
  in.may("kind", text, kind);
  in.call(TableName::Kind::given_hold);
  one.hold_is_left_open = true;
  one.stage.line = in.line();
  read_provenance(in, one.stage.provenance);
  HoldStage hold;
  in.may("spread_max", DifferenceIn{unit}, hold.spread_max);
  in.may("spread_within", distance_m, hold.spread_within_m);
  check_spread_within(in);
  in.may("high_at_most", TemperatureIn{unit}, one.highest_of_open_hold);
  one.stage.specified = hold;
}

void read_rule_stage(TableReader& in, InUnit unit, const PublishedRule& rule, RuleStage& one) {
  const TomlEntry* const kind = in.entry("kind");
  const auto* const word = kind ? kind->value.as<std::string>() : nullptr;
  if (word && *word == kOpenHold)
    read_open_hold(in, unit, one);
  else
    read_stage(in, unit, one.stage);
  read_stage_provenance(in, rule.provenance, one.stage.provenance);
  in.may("material", names, one.materials);
  for (const std::string& material : one.materials) {
    const bool known = std::any_of(rule.materials.begin(), rule.materials.end(),
                                   [&](const std::string& own) { return same_material(own, material); });
    if (!known) complain(in, "material", rule_problems::unknown_material(material, rule.materials));
  }
  read_range(in, one.range);
  if (in.may("lower_by", DifferenceIn{unit}, one.lower_by) &&
      (one.hold_is_left_open || !std::holds_alternative<HoldStage>(one.stage.specified)))
    complain(in, "lower_by", rule_problems::lower_by_of_no_hold());
  in.may("remark", name_text, one.remark);
}

/// Each material of the rule has what a heat treatment needs: a stage of its own or one that is for all.
void check_materials(TableReader& in, const PublishedRule& rule) {
  const bool by_material = std::any_of(rule.stages.begin(), rule.stages.end(),
                                       [](const RuleStage& one) { return !one.materials.empty(); });
  for (const std::string& material : rule.materials) {
    const bool has_own = std::any_of(rule.stages.begin(), rule.stages.end(), [&](const RuleStage& one) {
      return !one.materials.empty() && applies_to(one, material);
    });
    if (by_material && !has_own) complain(in, "materials", rule_problems::material_without_stage(material));
    const auto has_hold = [&](bool open) {
      return std::any_of(rule.stages.begin(), rule.stages.end(), [&](const RuleStage& one) {
        return one.hold_is_left_open == open && std::holds_alternative<HoldStage>(one.stage.specified) &&
               applies_to(one, material);
      });
    };
    if (has_hold(true) && has_hold(false)) complain(in, "stage", rule_problems::hold_beside_open_hold());
  }
}

void read_rule_keys(TableReader& in, PublishedRule& rule) {
  in.must("name", rule_name, rule.name);
  in.must("title", name_text, rule.title);
  in.must("unit",
          unit_word<TemperatureUnit>({{"C", TemperatureUnit::celsius}, {"F", TemperatureUnit::fahrenheit}}),
          rule.unit);
  read_provenance(in, rule.provenance);
  for (const char* key : {"source", "edition", "clause", "flag"}) must_be_there(in, key);
  in.may("materials", names, rule.materials);
  read_range(in, rule.range);
  in.may("remark", name_text, rule.remark);
  const InUnit unit{rule.unit};
  in.table("record", "[record]",
           [&](TableReader& inner) { read_record_limits(inner, unit, rule.record_limits); });
  in.each("stage", TableName::Kind::stage, [&](TableReader& inner) {
    RuleStage one;
    read_rule_stage(inner, unit, rule, one);
    rule.stages.push_back(std::move(one));
  });
  if (rule.stages.empty()) complain(in, "stage", rule_problems::no_stage());
  check_materials(in, rule);
}

/// Sorted, so that the same folder always gives the same answer.
std::vector<std::string> rule_files(const std::string& folder, Problems& problems) {
  std::vector<std::string> files;
  std::error_code error;
  fs::directory_iterator entry(folder, error);
  for (; !error && entry != fs::directory_iterator(); entry.increment(error))
    if (entry->path().extension() == ".toml") files.push_back(entry->path().string());
  if (error) problems.push_back(rule_problems::folder_not_readable(folder));
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

Result<PublishedRule> parse_rule(std::string_view source, const std::string& file) {
  auto rule = read_document<PublishedRule>(source, file, TomlFileKind::rule, read_rule_keys);
  if (rule) rule.value().file = file;
  return rule;
}

Result<PublishedRule> read_rule(const std::string& path) {
  const auto bytes = read_text_file(path);
  if (!bytes) return bytes.problems();
  return parse_rule(bytes.value(), path);
}

RuleShelf read_rule_folders(const std::vector<std::string>& folders) {
  RuleShelf shelf;
  for (const std::string& folder : folders)
    for (const std::string& file : rule_files(folder, shelf.problems)) {
      auto rule = read_rule(file);
      if (rule)
        shelf.rules.push_back(std::move(rule).value());
      else
        shelf.problems.insert(shelf.problems.end(), rule.problems().begin(), rule.problems().end());
    }
  std::stable_sort(shelf.rules.begin(), shelf.rules.end(),
                   [](const PublishedRule& a, const PublishedRule& b) { return a.name < b.name; });
  for (std::size_t i = 1; i < shelf.rules.size(); ++i)
    if (shelf.rules[i].name == shelf.rules[i - 1].name)
      shelf.problems.push_back(
          rule_problems::two_of_one_name(shelf.rules[i].name, shelf.rules[i - 1].file, shelf.rules[i].file));
  return shelf;
}

}  // namespace soakwright
