// SPDX-License-Identifier: GPL-3.0-or-later
// What a suspicion rests on, as sentences for people.
#pragma once

#include <string>
#include <string_view>

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright {

/// open, stuck, copied …: the word of the result and of the job.
std::string_view suspect_word(Suspect::Code code);

/// Temperatures in °C with one digit, differences in K. Ends with a full stop.
std::string suspect_sentence(const Suspect& suspect, const Record& record);

}  // namespace soakwright
