// SPDX-License-Identifier: GPL-3.0-or-later
// What a request lacks, in words.
#pragma once

#include <string>

#include "core/problems/problem.h"

namespace soakwright::request_problems {

/// `job` is the file that could name it; may be empty.
Problem no_log(const std::string& job);
Problem no_procedure(const std::string& job);
Problem review_without_procedure(const std::string& review);

}  // namespace soakwright::request_problems
