// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/clock_parts.h"

#include <string>

#include "core/read/time/time_stamp.h"
#include "core/read/unit_name.h"

namespace soakwright {

ClockParts clock_parts_of(std::string_view header, std::string_view first_clock, bool is_elapsed) {
  const std::string said = lower_case(header);
  if (said.find("h:mm") != std::string::npos) return ClockParts::hours_and_minutes;
  if (said.find("mm:ss") != std::string::npos) return ClockParts::minutes_and_seconds;
  if (is_elapsed) return ClockParts::nobody_knows;
  // A log may begin at midnight; one that counts minutes and seconds always begins so.
  const auto first = parse_stamp(first_clock);
  return first && first->clock_ns == 0 ? ClockParts::assumed_hours_and_minutes
                                       : ClockParts::hours_and_minutes;
}

}  // namespace soakwright
