// SPDX-License-Identifier: GPL-3.0-or-later
// The words that the result (JSON) has for what the program keeps as enumerations.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/evaluate/requirement.h"
#include "core/phases/phase.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

std::string_view result_word(Verdict verdict);        ///< met, not met, inconclusive
std::string_view result_word(Finding::Kind kind);     ///< not met, inconclusive, note
std::string_view result_word(QuantityKind kind);      ///< C, C/h, s, 1
std::string_view result_word(Phase::Kind kind);       ///< heat, hold, cool, idle
std::string_view result_word(Suspect::Code code);     ///< open, stuck, copied …
std::string_view result_word(ThermocoupleRole role);  ///< as the job writes it
std::string_view result_word(Zone zone);              ///< soak, edge
std::string_view result_word(ChannelUnit unit);       ///< C, F, K, mV
std::string_view result_word(SettingBy by);           ///< found, given
std::string_view result_word(Decision decision);      ///< simple, guarded
/// "5 min" for windows of that width, "overall" for a rate from one end of the ramp to the other.
std::string rate_basis_word(std::optional<int> window_minutes);

}  // namespace soakwright
