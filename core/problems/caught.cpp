// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/problems/caught.h"

#include <exception>
#include <new>

namespace soakwright {

Problem caught_problem(const std::string& file) {
  try {
    throw;
  } catch (const std::bad_alloc&) {
    return {ProblemKind::fault, file, 0, "there is not enough memory for this",
            "close other programs, or split the log"};
  } catch (const std::exception& thrown) {
    return {ProblemKind::fault, file, 0, std::string{"a fault of the program itself: "} + thrown.what(),
            "please report it, with the files that were read"};
  } catch (...) {
    return {ProblemKind::fault, file, 0, "a fault of the program itself",
            "please report it, with the files that were read"};
  }
}

}  // namespace soakwright
