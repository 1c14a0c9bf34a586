// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/clock_parts.h"

#include "core/read/time_stamp.h"
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

Problem unclear_clock(std::string_view first_clock, ClockParts parts, std::size_t line,
                      const std::string& path) {
  const std::string what = std::string{"the time '"}.append(first_clock);
  if (parts == ClockParts::minutes_and_seconds)
    return {ProblemKind::bad_input, path, line, what + "' has minutes and seconds and no hours",
            "export the log with hours, minutes and seconds"};
  return {ProblemKind::bad_input, path, line, what + "' may be minutes and seconds, or hours and minutes",
          "export the log with hours, minutes and seconds; or, where these are hours and minutes, write "
          "`time = \"elapsed h:mm:ss\"` or `time = \"time of day\"` in [import] of a job"};
}

}  // namespace soakwright
