// SPDX-License-Identifier: GPL-3.0-or-later
// Procedures as text: what the reader of procedure files makes of them.
#pragma once

#include <string>
#include <variant>

#include "core/procedure/procedure_file.h"
#include "tests/core/procedure/refusals.h"

namespace soakwright::given_procedure {

inline const std::string kHead = "soakwright = \"procedure 1\"\nnumber = \"HTP-021\"\nunit = \"C\"\n";
/// Lines 4 to 7 behind kHead, so that what follows begins at line 8.
inline const std::string kHold = "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"95 min\"\n";

inline Result<Procedure> parsed(const std::string& text) { return parse_procedure(text, "given.toml"); }
inline Procedure procedure(const std::string& text) { return accepted(parsed(text)); }

}  // namespace soakwright::given_procedure
