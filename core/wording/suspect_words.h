// SPDX-License-Identifier: GPL-3.0-or-later
// What a suspicion rests on, in words.
#pragma once

#include <string>

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright {

/// Temperatures in °C with one digit, differences in K. Ends with a full stop.
std::string suspect_sentence(const Suspect& suspect, const Record& record);

}  // namespace soakwright
