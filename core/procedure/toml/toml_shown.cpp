// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/toml_shown.h"

#include <algorithm>
#include <utility>

#include "core/procedure/toml/toml_tree.h"

namespace soakwright {
namespace {

TomlShownTable shown_table(std::string_view text, TomlTableName name, std::size_t line,
                           const TomlTable& table) {
  TomlShownTable shown{std::move(name), line, {}};
  for (const TomlEntry& entry : table.entries) {
    TomlShownKey key{entry.key, {}, entry.line, false};
    const auto* const inner = entry.value.as<TomlTable>();
    if (const auto* const words = entry.value.as<std::string>())
      key.value = *words;
    else if (inner != nullptr && inner->form != TomlTableForm::braces)
      key.spread = true;
    else
      key.value =
          std::string(text.substr(entry.value.place.begin, entry.value.place.end - entry.value.place.begin));
    shown.keys.push_back(std::move(key));
  }
  return shown;
}

}  // namespace

const TomlShownKey* TomlShownTable::find(std::string_view key) const {
  for (const TomlShownKey& one : keys)
    if (one.key == key) return &one;
  return nullptr;
}

Result<std::vector<TomlShownTable>> shown_toml_tables(std::string_view text, const std::string& file) {
  const auto tree = parse_toml(text, file);
  if (!tree) return tree.problems();
  std::vector<TomlShownTable> tables;
  TomlTable head;
  for (const TomlEntry& entry : tree.value().entries) {
    const auto* const table = entry.value.as<TomlTable>();
    const auto* const list = entry.value.as<TomlArray>();
    const bool of_tables = list != nullptr && !list->values.empty() &&
                           std::all_of(list->values.begin(), list->values.end(),
                                       [](const TomlValue& one) { return one.as<TomlTable>() != nullptr; });
    if (table != nullptr) {
      tables.push_back(shown_table(text, {entry.key, std::nullopt}, entry.value.line, *table));
    } else if (of_tables) {
      for (std::size_t i = 0; i < list->values.size(); ++i)
        tables.push_back(
            shown_table(text, {entry.key, i}, list->values[i].line, *list->values[i].as<TomlTable>()));
    }
    // A table in braces is a value of the head as well.
    if ((table == nullptr || table->form == TomlTableForm::braces) && !of_tables)
      head.entries.push_back(entry);
  }
  std::stable_sort(tables.begin(), tables.end(),
                   [](const TomlShownTable& a, const TomlShownTable& b) { return a.line < b.line; });
  tables.insert(tables.begin(), shown_table(text, {}, 1, head));
  return tables;
}

}  // namespace soakwright
