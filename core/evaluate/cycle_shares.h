// A hold whose time adds up over several records of its weld.
#pragma once

#include <string>
#include <vector>

#include "core/evaluate/hold_case.h"
#include "core/measure/hold_time.h"

namespace soakwright {

/// What each record gives, this one last; empty where there is one record only, or where the hold does not
/// add up.
std::vector<CycleShare> cycle_shares(const HoldCase& hold, const HoldTime& here);

/// Certain and possible time over all of them; possible is open where any is.
HoldTime added_up(const std::vector<CycleShare>& shares);

/// "cycle 1: 1 h, cycle 2: 45 min".
std::string say_shares(const std::vector<CycleShare>& shares);

}  // namespace soakwright
