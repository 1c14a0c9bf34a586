// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of a job's tables about heat (preheat, bands, tempering, hydrogen) as fields of a form.
#pragma once

#include <string>
#include <vector>

#include "app/gui/panes/forms/key_form.h"

namespace soakwright::gui {

/// Of the job itself (`table` empty: only what belongs to preheat), of [composition], [qualified] or
/// [hydrogen], or of an entry of [[band]].
std::vector<FormKey> job_keys(const std::string& table);

/// Of the composition: short names and figures, two beside each other.
inline constexpr int kElementsInARow = 2;

}  // namespace soakwright::gui
