// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/problems_of_form.h"

#include "app/gui/texts/problem_text.h"

namespace soakwright::gui {
namespace {

/// A problem belongs to the key on its line; on the line of the table's header to the key that it names.
std::string key_meant(const Problem& problem, const TomlShownTable& table, const KeyForm& form) {
  for (const TomlShownKey& key : table.keys)
    if (key.line == problem.line && form.has(key.key)) return key.key;
  if (problem.line != table.line) return {};
  for (const FormKey& key : form.keys())
    if (problem.what.find("`" + key.key + "`") != std::string::npos) return key.key;
  return {};
}

QString words_of(const Problem& problem) {
  Problem here = problem;
  here.file.clear();
  here.line = 0;
  return problem_text(here);
}

/// The table whose lines hold `line`.
const TomlShownTable* table_at(const std::vector<TomlShownTable>& tables, std::size_t line) {
  const TomlShownTable* found = nullptr;
  for (const TomlShownTable& table : tables) {
    for (const TomlShownKey& key : table.keys)
      if (key.line == line) return &table;
    if (table.line <= line) found = &table;
  }
  return found;
}

}  // namespace

TableProblems problems_of_table(const Problems& problems, const std::vector<TomlShownTable>& tables,
                                const TomlShownTable& table, const KeyForm& form) {
  TableProblems found;
  for (const Problem& problem : problems) {
    if (table_at(tables, problem.line) != &table) continue;
    const std::string key = key_meant(problem, table, form);
    QString& place = key.empty() ? found.of_table : found.of_keys[key];
    if (!place.isEmpty()) place += u'\n';
    place += words_of(problem);
  }
  return found;
}

}  // namespace soakwright::gui
