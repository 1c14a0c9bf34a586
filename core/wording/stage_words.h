// SPDX-License-Identifier: GPL-3.0-or-later
// The names of stages, verdicts, phases and suspects, as people read them.
#pragma once

#include <optional>
#include <string>

#include "core/evaluate/requirement.h"
#include "core/phases/phase.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// "Met", "Not met", "Inconclusive".
std::string verdict_text(Verdict verdict);
/// "Not met", "Inconclusive", "Note".
std::string finding_kind_text(Finding::Kind kind);
/// "Stage 2, hold"; 0 is "Whole record".
std::string stage_title(const Procedure* procedure, std::size_t number);
/// The weld's number; empty where there is none.
std::string weld_text(const std::optional<std::string>& weld);
/// "heat", "hold", "cool", "idle".
std::string phase_kind_text(Phase::Kind kind);
/// "open circuit", "reversed polarity".
std::string suspect_text(Suspect::Code code);

}  // namespace soakwright
