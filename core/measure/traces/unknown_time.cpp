// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/unknown_time.h"

namespace soakwright {

std::vector<UnknownTime> unknown_times(const Trace& trace, Span record) {
  std::vector<UnknownTime> all;
  for (const Span& time : unknown_spans(trace, record.first, record.second))
    all.push_back({time, temperature_at(trace, time.first), temperature_at(trace, time.second),
                   time.first <= record.first + kSampleSlack_s,
                   time.second >= record.second - kSampleSlack_s});
  return all;
}

bool known_at_most(const UnknownTime& unknown, double level_c) {
  const auto below = [&](const std::optional<double>& reading) {
    return reading && *reading <= level_c + kTemperatureSlack;
  };
  const bool before = below(unknown.before_c) || (unknown.from_record_start && !unknown.before_c);
  const bool after = below(unknown.after_c) || (unknown.to_record_end && !unknown.after_c);
  return before && after && (unknown.before_c || unknown.after_c);
}

}  // namespace soakwright
