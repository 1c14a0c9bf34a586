// SPDX-License-Identifier: GPL-3.0-or-later
// Work that a library may end the program over (Qt does not check each of its allocations) runs in a process
// of its own, so that its end is a message and not the end of everything else.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "core/problems/problem.h"

namespace soakwright::cli {

/// Returns what `work` returns. If its process ended by itself, the problem says how and names `path`, the
/// file that was to be written. What `work` changes in memory is lost. Where processes cannot be forked,
/// `work` runs in this one.
[[nodiscard]] std::optional<Problem> in_separate_process(const std::string& path,
                                                         const std::function<std::optional<Problem>()>& work);

}  // namespace soakwright::cli
