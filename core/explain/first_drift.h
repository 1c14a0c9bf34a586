// The first drift: the earliest moment from which a run was bound to miss a limit, and why.
//
// Seen from the whole record: nothing that could still have happened before the moment at which the work
// really left the hold, or the record really ended, would have kept the limit. Only of what is not met; what
// is undecided has none.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/judge/analysis.h"

namespace soakwright {

struct FirstDrift {
  std::size_t requirement = 0;  ///< index into Verdicts::requirements
  double at_s = 0.0;
  std::string reason;  ///< one plain sentence
};

/// One for each requirement that is not met, in the order of the requirements. Empty where nothing was
/// judged.
std::vector<FirstDrift> first_drifts(const Analysis& analysis);

/// The earliest of them, the first of equals: from there on the record could not be met.
const FirstDrift* earliest_of(const std::vector<FirstDrift>& drifts);

}  // namespace soakwright
