// SPDX-License-Identifier: GPL-3.0-or-later
// Standard output and standard error: what goes there arrives, or the run says that it did not.
#pragma once

#include <optional>
#include <string_view>

#include "core/problems/problem.h"

namespace soakwright::cli {

/// Writes to standard output and flushes it. Returns nullopt if all of it arrived.
std::optional<Problem> write_standard_output(std::string_view text);

/// One line on standard error, `soakwright: ` and the problem; returns the exit code that it asks for.
int say(const Problem& problem);
/// Each problem on a line; the exit code of the first.
int say(const Problems& problems);

}  // namespace soakwright::cli
