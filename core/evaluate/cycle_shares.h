// A hold whose time is added up over several records of its weld.
#pragma once

#include <string>
#include <vector>

#include "core/evaluate/hold_case.h"
#include "core/measure/hold_time.h"

namespace soakwright {

/// Whether previous records count towards the hold: it is accumulated, and there are some.
bool adds_up(const HoldCase& hold);

/// What each record gives, `here` last; empty where previous records do not count.
std::vector<CycleShare> cycle_shares(const HoldCase& hold, const CycleShare& here);

/// The sum of all; possible is open where any is.
CycleShare added_up(const std::vector<CycleShare>& shares);

/// Each channel's time over all records, by its name. Possible is open for one that some record does not
/// have.
std::vector<ChannelTime> added_up_by_channel(const HoldCase& hold, std::vector<ChannelTime> here);

/// "cycle 1: 1 h, cycle 2, part 1: 45 min, cycle 2, part 2: 20 min".
std::string say_shares(const std::vector<CycleShare>& shares);

}  // namespace soakwright
