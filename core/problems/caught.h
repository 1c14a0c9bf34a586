// SPDX-License-Identifier: GPL-3.0-or-later
// The core's border: what is thrown inside comes out as a problem.
#pragma once

#include <string>

#include "core/problems/problem.h"

namespace soakwright {

/// The exception being handled, as a problem with `file` as its place. std::bad_alloc is a lack of memory;
/// anything else is a fault of the program itself. Call it only within a catch block.
Problem caught_problem(const std::string& file);

/// What `work` returns (a Result or Problems), or the problem that stands for what it threw.
template <typename Work>
auto caught(const std::string& file, const Work& work) -> decltype(work()) {
  try {
    return work();
  } catch (...) {
    return Problems{caught_problem(file)};
  }
}

}  // namespace soakwright
