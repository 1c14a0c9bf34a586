// SPDX-License-Identifier: GPL-3.0-or-later
// One time stamp, read with care: a date, a time of day, or both, as loggers and spreadsheets write them.
//
// The three numbers of a date are kept as they stand; which is the day is settled later, over the whole file
// (date_order.h).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/read/time/date_fields.h"

namespace soakwright {

struct Stamp {
  std::optional<DateFields> date;
  std::optional<std::int64_t> clock_ns;  ///< since midnight; 24:00:00 and 23:59:60 are the next midnight
  std::optional<int> offset_minutes;     ///< east of Greenwich
  std::size_t clock_at = 0;              ///< where the clock's text begins
  bool half_day = false;                 ///< told by AM or PM
};

/// The whole of `text` must be a stamp.
std::optional<Stamp> parse_stamp(std::string_view text);
/// [-]H:MM:SS[.f] with any number of hours, in nanoseconds.
std::optional<std::int64_t> parse_elapsed(std::string_view text);
/// AM or PM in any writing.
bool is_half_day_mark(std::string_view text);

}  // namespace soakwright
