// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/problems/caught.h"

#include <exception>
#include <new>

#include "core/problems/fault_problems.h"

namespace soakwright {

Problem caught_problem(const std::string& file) {
  try {
    throw;
  } catch (const std::bad_alloc&) {
    return fault_problems::too_little_memory(file);
  } catch (const std::exception& thrown) {
    return fault_problems::fault(file, thrown.what());
  } catch (...) {
    return fault_problems::unknown_fault(file);
  }
}

}  // namespace soakwright
