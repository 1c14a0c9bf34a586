// SPDX-License-Identifier: GPL-3.0-or-later
// Midnights in stamps that have a time of day and no date.
#pragma once

#include "core/record/clock/stamp_clock.h"

namespace soakwright {

/// The first rows of new days, each with the day by which it and all after it move: behind steps back of 24
/// h, more or less one interval.
StampClock::Moves midnights_of(StampClock& clock);

}  // namespace soakwright
