// SPDX-License-Identifier: GPL-3.0-or-later
// Slips of the hand that would destroy something: found before any work is done.
#pragma once

#include <optional>
#include <string>

#include "app/cli/arguments.h"
#include "core/problems/problem.h"

namespace soakwright::cli {

/// An output that is a file to be read (also one that only the job names), or one file for two outputs, by
/// whatever paths and links they are named. Returns nullopt if there is none.
std::optional<Problem> clash_of_outputs(const Arguments& arguments);

}  // namespace soakwright::cli
