// SPDX-License-Identifier: GPL-3.0-or-later
// A time as a log without dates prints it, and as its report says it: "11:29:45", "+1 d 00:10:00", "0:09:30".
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string_view>

namespace soakwright {

struct PrintedTime {
  std::int64_t nanoseconds = 0;  ///< since midnight of the first day, or since the elapsed time's zero
  bool has_seconds = true;       ///< false: hours and minutes alone were written
  auto operator<=>(const PrintedTime&) const = default;
};

/// [+N d] H:MM[:SS[.f]] with any number of hours; a minus, ASCII or true, may stand first. Behind a number of
/// days the hours are 0 to 23. Nothing for anything else.
std::optional<PrintedTime> parse_printed_time(std::string_view text);

}  // namespace soakwright
