// SPDX-License-Identifier: GPL-3.0-or-later
// A hold whose time is added up over several records of its weld.
#pragma once

#include <string>
#include <vector>

#include "core/evaluate/stages/hold_case.h"
#include "core/measure/holds/hold_time.h"

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

/// What each record gives, in order: a cycle, or a part of one that was interrupted.
void remark_shares(const std::vector<CycleShare>& shares, Statements& remarks);

}  // namespace soakwright
