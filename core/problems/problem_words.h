// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of a problem before it has its place.
#pragma once

#include <string>

namespace soakwright {

/// What was found and what would help, as in Problem.
struct ProblemWords {
  std::string what, help;
};

}  // namespace soakwright
