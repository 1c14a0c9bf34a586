// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/midnights.h"

#include <cstdlib>

namespace soakwright {

StampClock::Moves midnights_of(StampClock& clock) {
  const WideNs twice_interval = clock.twice_interval();
  StampClock::Moves moves;
  for (std::size_t row = 0; row + 1 < clock.rows(); ++row) {
    const std::int64_t off = clock.step(row) + kNanosecondsPerDay;
    if (clock.step(row) < 0 && WideNs{2} * std::abs(off) <= twice_interval)
      moves.emplace_back(row + 1, kNanosecondsPerDay);
  }
  return moves;
}

}  // namespace soakwright
