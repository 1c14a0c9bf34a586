// SPDX-License-Identifier: GPL-3.0-or-later
// The required cycle as lines on the chart of a record: the fastest ramps that the procedure permits and the
// shortest hold that it requires, each placed where the record's own stage begins.
//
// Temperatures in C, times in seconds from the record's first sample. Nothing is decided here: where a stage
// begins and what its limit is are the evaluation's.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/evaluate/analysis.h"

namespace soakwright {

/// A thermocouple that keeps the limit and is on the line, or on the permitted side of it, where the line
/// begins stays there: below it on heating, above it on cooling. The line begins at the hottest evaluated
/// reading of that moment (cooling: the coldest).
struct RequiredRamp {
  std::size_t requirement = 0;  ///< index into Verdicts::requirements: the heating or cooling rate
  double from_s = 0.0, to_s = 0.0;
  double from_c = 0.0, to_c = 0.0;
};

/// From the moment at which the hold's clock started, for as long as is required.
struct RequiredHold {
  std::size_t requirement = 0;  ///< index into Verdicts::requirements: the hold time
  double from_s = 0.0, to_s = 0.0;
  double low_c = 0.0;
  std::optional<double> high_c;
};

struct RequiredCycle {
  std::vector<RequiredRamp> ramps;
  std::vector<RequiredHold> holds;
};

/// Empty where nothing was evaluated. A stage that was not found in the record, a ramp without a limit on its
/// rate and a hold without a required time are left out.
RequiredCycle required_cycle(const Analysis& analysis);

}  // namespace soakwright
