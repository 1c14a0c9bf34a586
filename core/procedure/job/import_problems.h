// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with import settings, in words.
#pragma once

#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright {

ProblemWords not_a_header_line(const FoundValue& found);

/// `--unlisted off` without a job that lists thermocouples.
Problem unlisted_without_job();

}  // namespace soakwright
