// SPDX-License-Identifier: GPL-3.0-or-later
// The first deviation: where a run first left a limit that it does not meet, and from when the limit could no
// longer be met.
//
// Seen from the whole record: nothing that could still have happened between `lost_from_s` and the moment at
// which the work left the hold, or the record ended, would have kept the limit. Only of what is not met; what
// is inconclusive has none.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/analysis.h"
#include "core/units/statement.h"

namespace soakwright {

struct FirstDeviation {
  std::size_t requirement = 0;  ///< index into Verdicts::requirements
  double at_s = 0.0;            ///< where the deviation begins
  double lost_from_s = 0.0;     ///< from when the limit could no longer be met; not before at_s
  std::optional<std::string> channel;
  Statement what;
};

/// One for each requirement that is not met, in the order of the requirements. Empty where nothing was
/// evaluated.
std::vector<FirstDeviation> first_deviations(const Analysis& analysis);

/// The earliest of them, the first of equals. Returns nullptr where there is none.
const FirstDeviation* earliest_of(const std::vector<FirstDeviation>& deviations);

}  // namespace soakwright
