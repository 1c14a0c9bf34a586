// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/job_changes.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include <fmt/format.h>

#include "core/procedure/toml/toml_edit.h"
#include "core/procedure/toml/toml_text.h"
#include "core/procedure/toml/toml_tree.h"
#include "core/units/name_match.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

/// Keys whose values are no texts (TOML 1.0: integer, local date, local date-time).
std::string written(const JobChange& change) {
  const bool of_import = !change.column && change.table == "import";
  const bool bare =
      (of_import && (change.key == "header_line" || change.key == "date" || change.key == "start")) ||
      (!change.column && change.table.empty() && change.key == "cycle") || change.key == "valid_until";
  return bare ? *change.value : toml_text(*change.value);
}

/// A value of an added entry: moments may be seconds, which are no text.
std::string written_in_entry(const std::string& key, const std::string& value) {
  const bool moment = key == "from" || key == "to" || key == "at";
  return moment && parse_number(value) ? value : toml_text(value);
}

/// The entry of [[thermocouple]] that is for the column; none if there is no such entry.
std::optional<std::size_t> entry_for(const TomlTable& tree, const ColumnNames& column) {
  const TomlEntry* const all = tree.find("thermocouple");
  const auto* const list = all != nullptr ? all->value.as<TomlArray>() : nullptr;
  if (list == nullptr) return std::nullopt;
  for (std::size_t i = 0; i < list->values.size(); ++i) {
    const auto* const table = list->values[i].as<TomlTable>();
    const TomlEntry* const said = table != nullptr ? table->find("column") : nullptr;
    if (said == nullptr) continue;
    const auto* const text = said->value.as<std::string>();
    const auto* const number = said->value.as<std::int64_t>();
    if (text == nullptr && number == nullptr) continue;
    const std::string wanted = text != nullptr ? name_to_match(*text) : std::to_string(*number);
    if (std::any_of(column.names.begin(), column.names.end(),
                    [&](const std::string& name) { return name_to_match(name) == wanted; }))
      return i;
  }
  return std::nullopt;
}

}  // namespace

Result<std::string> changed_job(std::string_view text, const JobChange& change, const std::string& file) {
  if (change.whole) return *change.whole;
  if (change.added) {
    std::vector<TomlKey> keys;
    for (const auto& [key, value] : change.added->keys) keys.push_back({key, written_in_entry(key, value)});
    return with_toml_entry(text, change.added->list, keys, file);
  }
  const auto value = change.value ? std::optional(written(change)) : std::nullopt;
  if (!change.column) return with_toml_key(text, {change.table, std::nullopt}, change.key, value, file);
  const auto tree = parse_toml(text, file);
  if (!tree) return tree.problems();
  const auto entry = entry_for(tree.value(), *change.column);
  if (entry) return with_toml_key(text, {"thermocouple", entry}, change.key, value, file);
  if (!value) return std::string{text};
  return with_toml_entry(text, "thermocouple",
                         {{"column", toml_text(change.column->names.front())}, {change.key, *value}}, file);
}

Result<std::string> changed_job(std::string_view text, const std::vector<JobChange>& changes,
                                const std::string& file) {
  Result<std::string> changed = std::string{text};
  for (const JobChange& change : changes) {
    changed = changed_job(changed.value(), change, file);
    if (!changed) return changed;
  }
  return changed;
}

Result<std::vector<JobChange>> given_in_job(std::string_view text, const std::string& file) {
  const auto tree = parse_toml(text, file);
  if (!tree) return tree.problems();
  std::vector<JobChange> given;
  const TomlEntry* const reading = tree.value().find("import");
  const auto* const table = reading != nullptr ? reading->value.as<TomlTable>() : nullptr;
  if (table == nullptr) return given;
  for (const TomlEntry& entry : table->entries)
    if (const auto* const words = entry.value.as<std::string>())
      given.push_back({std::nullopt, entry.key, *words});
    else if (const auto* const number = entry.value.as<std::int64_t>())
      given.push_back({std::nullopt, entry.key, std::to_string(*number)});
    else if (const auto* const day = entry.value.as<CivilDate>())
      given.push_back(
          {std::nullopt, entry.key, fmt::format("{:04}-{:02}-{:02}", day->year, day->month, day->day)});
    else if (const auto* const moment = entry.value.as<LocalTime>())
      given.push_back({std::nullopt, entry.key, moment->iso()});
  return given;
}

std::string new_job_text(std::string_view log, std::string_view procedure) {
  std::string text = "soakwright = \"job 1\"\n";
  if (!log.empty()) text += "log = " + toml_text(log) + "\n";
  if (!procedure.empty()) text += "procedure = " + toml_text(procedure) + "\n";
  return text;
}

}  // namespace soakwright
