// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a review file, in words.
#pragma once

#include "core/problems/problem_words.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright::review_problems {

ProblemWords not_a_digest(const FoundValue& found);
ProblemWords names_no_finding();
ProblemWords second_disposition();

}  // namespace soakwright::review_problems
