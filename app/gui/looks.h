// SPDX-License-Identifier: GPL-3.0-or-later
// Colours and size of text of the whole program: the desktop's, or as a person prefers them.
#pragma once

#include "app/gui/preferences.h"

namespace soakwright::gui {

/// To be called on the GUI thread; the first call takes note of what the desktop has.
void apply_looks(const Preferences& preferences);

}  // namespace soakwright::gui
