// SPDX-License-Identifier: GPL-3.0-or-later
// What 12:30 means in a time column without dates: hours and minutes, or minutes and seconds.
#pragma once

#include <string_view>

namespace soakwright {

enum class ClockParts { hours_and_minutes, assumed_hours_and_minutes, nobody_knows, minutes_and_seconds };

/// Of a column whose clocks all have two parts. `is_elapsed`: its name says so, or a clock of it is none that
/// a time of day has.
ClockParts clock_parts_of(std::string_view header, std::string_view first_clock, bool is_elapsed);

}  // namespace soakwright
