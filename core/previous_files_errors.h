// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with the files that stand in for those of previous records, in words.
#pragma once

#include <cstddef>
#include <string>

#include "core/problems/problem.h"

namespace soakwright {

/// The job names `named` previous records, and files of `given` are there.
Problem other_number_of_previous_files(const std::string& job, std::size_t named, std::size_t given);

}  // namespace soakwright
