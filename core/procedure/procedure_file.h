// SPDX-License-Identifier: GPL-3.0-or-later
// The door for procedure files: TOML text to Procedure.
#pragma once

#include <string>
#include <string_view>

#include "core/problems/problem.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// Reads the file at `path`. All problems of the file come in one answer: an unknown key, a missing key, a
/// range upside down, a number that is not finite, each with its line and what was expected.
Result<Procedure> read_procedure(const std::string& path);

/// The same from text; `file` names it in problems.
Result<Procedure> parse_procedure(std::string_view text, const std::string& file);

}  // namespace soakwright
