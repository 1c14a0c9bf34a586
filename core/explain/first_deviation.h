// The first deviation: the earliest moment from which a run was bound to miss a limit, and why.
//
// Seen from the whole record: nothing that could still have happened before the moment at which the work
// really left the hold, or the record really ended, would have kept the limit. Only of what is not met; what
// is inconclusive has none.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/analysis.h"

namespace soakwright {

struct FirstDeviation {
  std::size_t requirement = 0;  ///< index into Verdicts::requirements
  double at_s = 0.0;
  std::string reason;  ///< one plain sentence
};

/// One for each requirement that is not met, in the order of the requirements. Empty where nothing was
/// evaluated.
std::vector<FirstDeviation> first_deviations(const Analysis& analysis);

/// The earliest of them, the first of equals: from there on the record could not be met.
const FirstDeviation* earliest_of(const std::vector<FirstDeviation>& deviations);

}  // namespace soakwright
