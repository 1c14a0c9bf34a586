// SPDX-License-Identifier: GPL-3.0-or-later
// A spare thermocouple that takes over from its channel.
#pragma once

#include <optional>

#include "core/measure/traces/trace.h"

namespace soakwright {

/// Puts the spare behind the main trace where that is unknown for longer than `interpolate_max_s`, from the
/// last reading before (the record's start where there is none), or from the start of the main one's first
/// excluded time, if that is earlier; for good. The reading at that instant is the main one's, no line joins
/// the two, and from then on the spare's readings are the main trace's alone. Nullopt if the main one
/// needs no spare.
std::optional<TakeOver> take_over(const Record& record, Trace& main, Trace& spare, double interpolate_max_s);

}  // namespace soakwright
