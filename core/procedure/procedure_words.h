// SPDX-License-Identifier: GPL-3.0-or-later
// The words that procedure files have for what the program keeps as enumerations; results use the same.
#pragma once

#include "core/procedure/procedure.h"
#include "core/units/word_table.h"

namespace soakwright {

inline constexpr auto kProvenanceFlagWords =
    word_table<Provenance::Flag::proposal>("seen", "memory", "proposal");

}  // namespace soakwright
