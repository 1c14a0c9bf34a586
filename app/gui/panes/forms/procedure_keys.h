// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of a procedure as fields of a form: their names, units and what they mean.
#pragma once

#include "app/gui/panes/forms/key_form.h"

namespace soakwright::gui {

/// Of the keys before every table (`table` empty), [evaluation] or [record].
std::vector<FormKey> procedure_keys(const std::string& table);
/// Of a [[stage]] of that kind; of a kind that is not known only `kind`.
std::vector<FormKey> stage_keys(const std::string& kind);
/// The kinds that there are, with their names.
const std::vector<std::pair<std::string, QString>>& stage_kinds();

}  // namespace soakwright::gui
