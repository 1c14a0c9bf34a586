// SPDX-License-Identifier: GPL-3.0-or-later
// Time of a channel that is neither known nor excluded, with the readings beside it.
#pragma once

#include <optional>
#include <vector>

#include "core/measure/traces/trace.h"

namespace soakwright {

struct UnknownTime {
  Span time;
  std::optional<double> before_c, after_c;  ///< the readings at its two ends
  bool from_record_start = false, to_record_end = false;
};

/// All of a trace within the record, in time order.
std::vector<UnknownTime> unknown_times(const Trace& trace, Span record);

/// Whether the channel is known to be at or below `level_c` at both ends; at the record's start and end the
/// one reading beside it is enough. False where there is no reading.
bool known_at_most(const UnknownTime& unknown, double level_c);

/// What the readings beside unknown time stay below a hold's range by, for that time to be taken as cold.
inline constexpr double kFarBelowHold_k = 50.0;

}  // namespace soakwright
