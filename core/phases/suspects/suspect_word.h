// SPDX-License-Identifier: GPL-3.0-or-later
// The words of the result and of the job for what a thermocouple is suspected of.
#pragma once

#include <string_view>

#include "core/phases/phase.h"

namespace soakwright {

/// open, stuck, copied …
std::string_view suspect_word(Suspect::Code code);

}  // namespace soakwright
