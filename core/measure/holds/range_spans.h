// SPDX-License-Identifier: GPL-3.0-or-later
// Where a trace lies below, in and above a range, crossings taken on its straight lines.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/measure/traces/trace.h"

namespace soakwright {

enum class RangeState : std::uint8_t { below, in, above };

struct RangeSpan {
  double from = 0.0;
  double to = 0.0;
  RangeState state = RangeState::in;
  std::size_t piece = 0;  ///< index into Trace::pieces
};

/// Either edge may be infinite; a range upside down holds nothing.
struct TemperatureRange {
  double low_c = 0.0;
  double high_c = 0.0;
};
/// A range for each source of a trace; one alone is for all of them.
using SourceRanges = std::vector<TemperatureRange>;
inline const TemperatureRange& range_of_source(const SourceRanges& ranges, std::size_t source) {
  return source < ranges.size() ? ranges[source] : ranges.back();
}

/// The known time of `trace`, split at the edges of low…high (either may be infinite). At the edge is in.
/// Spans of one piece join end to end; one of no length is given only for a reading with no line on either
/// side.
std::vector<RangeSpan> range_spans(const Trace& trace, double low_c, double high_c);
std::vector<RangeSpan> range_spans(const Trace& trace, const SourceRanges& ranges);

/// First time after `after` at which the trace, from below, reaches `level`.
std::optional<double> first_rise_through(const Trace& trace, double level_c, double after_s);
/// Last time before `before` at which the trace, from below, reaches `level`.
std::optional<double> last_rise_through(const Trace& trace, double level_c, double before_s);
/// First time at or after `after` at which the trace falls below `level`.
std::optional<double> first_fall_through(const Trace& trace, double level_c, double after_s);
/// Last time at or before `before` at which the trace falls below `level`.
std::optional<double> last_fall_through(const Trace& trace, double level_c, double before_s);

}  // namespace soakwright
