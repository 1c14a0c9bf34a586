// SPDX-License-Identifier: GPL-3.0-or-later
// Colours and size of text of the whole program: the desktop's, or as a person prefers them.
#pragma once

#include <QPalette>

#include "app/gui/preferences.h"

namespace soakwright::gui {

/// To be called on the GUI thread. What is preferred as on the desktop is left alone, and put back where it
/// was something else before.
void apply_looks(const Preferences& preferences);

QPalette dark_palette();

}  // namespace soakwright::gui
