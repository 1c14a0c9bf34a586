// SPDX-License-Identifier: GPL-3.0-or-later
// Which field of a form a problem of a TOML file belongs to.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "app/gui/panes/forms/key_form.h"
#include "core/problems/problem.h"

namespace soakwright::gui {

/// What is wrong with one table: by key, and with the table as a whole.
struct TableProblems {
  std::map<std::string, QString> of_keys;
  QString of_table;
};

/// Those of `problems` whose lines are in `table`, one of `tables`, the file's in its order; `form` shows its
/// keys.
TableProblems problems_of_table(const Problems& problems, const std::vector<TomlShownTable>& tables,
                                const TomlShownTable& table, const KeyForm& form);

}  // namespace soakwright::gui
