// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of an exception that reached the core's border.
#pragma once

#include <string>
#include <string_view>

#include "core/problems/problem.h"

namespace soakwright::fault_problems {

Problem too_little_memory(const std::string& file);
Problem unknown_fault(const std::string& file);
/// `reason` is the exception's own, in English.
Problem fault(const std::string& file, std::string_view reason);

}  // namespace soakwright::fault_problems
