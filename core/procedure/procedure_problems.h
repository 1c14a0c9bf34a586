// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong between the keys of a procedure, in words.
#pragma once

#include <cstddef>

#include "core/problems/problem_words.h"

namespace soakwright::procedure_problems {

ProblemWords no_stage();
ProblemWords too_many_stages(std::size_t stages, std::size_t most);
ProblemWords spread_within_without_spread_max();
ProblemWords edge_fraction_above_1();
/// A share of a `low` that is 0 or negative in the file's unit.
ProblemWords edge_fraction_of_low_not_above_0();

}  // namespace soakwright::procedure_problems
