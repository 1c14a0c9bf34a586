// SPDX-License-Identifier: GPL-3.0-or-later
// A problem with what a file holds: the one way in which the *_problems files make it.
#pragma once

#include <cstddef>
#include <string>
#include <utility>

#include "core/problems/problem.h"

namespace soakwright {

/// `line` is 0 where no line is to blame.
inline Problem bad_input(const std::string& file, std::size_t line, std::string what, std::string help) {
  return {ProblemKind::bad_input, file, line, std::move(what), std::move(help)};
}

}  // namespace soakwright
