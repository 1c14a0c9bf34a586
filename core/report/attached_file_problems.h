// SPDX-License-Identifier: GPL-3.0-or-later
// What keeps a source file out of a report, in words.
#pragma once

#include <string>

#include "core/problems/problem.h"

namespace soakwright {

/// The file at `path` is no longer what was evaluated.
Problem changed_since_evaluated(const std::string& path);

}  // namespace soakwright
