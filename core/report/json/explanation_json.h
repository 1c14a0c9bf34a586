// SPDX-License-Identifier: GPL-3.0-or-later
// A finding's explanation and a first deviation, in the result.
#pragma once

#include <optional>

#include "core/explain/first_deviation.h"
#include "core/report/json/result_members.h"
#include "core/wording/explanation.h"

namespace soakwright {

/// `explanation` of a finding: null for a note.
void write_explanation(Members& members, const std::optional<Explanation>& explanation);
/// `first_deviation`: null where every limit is met. The record's own names its requirement.
void write_deviation(Members& members, const FirstDeviation* deviation, const Requirement* requirement,
                     const PrintedNumbers& say);

}  // namespace soakwright
