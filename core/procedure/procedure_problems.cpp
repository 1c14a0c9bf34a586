// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/procedure_problems.h"

#include <fmt/format.h>

namespace soakwright::procedure_problems {

ProblemWords no_stage() { return {"the procedure has no stage", "add at least one [[stage]]"}; }

ProblemWords too_many_stages(std::size_t stages, std::size_t most) {
  return {fmt::format("the procedure has {} stages; at most {} are read", stages, most),
          "split the procedure"};
}

ProblemWords spread_within_without_spread_max() {
  return {"`spread_within` limits nothing without `spread_max`", "give `spread_max`, or leave it out"};
}

ProblemWords edge_fraction_above_1() {
  return {"`edge_fraction_min` is above 1", "it is a share of `low`: half is 0.5"};
}

ProblemWords edge_fraction_of_low_not_above_0() {
  return {"`edge_fraction_min` is a share of a `low` that is not above 0", "leave it out"};
}

}  // namespace soakwright::procedure_problems
