// How long a hold lasted: what is certain, what is possible, and what adds up out of the range or above its
// lower edge.
#pragma once

#include <optional>
#include <vector>

#include "core/measure/hold_choice.h"

namespace soakwright {

struct HoldTime {
  double certain_s = 0.0;
  std::optional<double>
      possible_s;  ///< nothing where a record that starts or ends in the hold leaves it open
};

/// `continuous`: the core, and the time around it in which the group is in or unknown. `accumulated`: all
/// in_range of the hold and all such times around them. With no core: certain 0, possible the longest
/// unknown time (accumulated: all of it) between the neighbours' continuous_holds.
HoldTime hold_time(const std::vector<HoldCourse>& holds, std::size_t index, HoldStage::Count count,
                   Span record);

/// Total time within `time` in which the group is known to be out, and in which it is unknown.
struct TimeOut {
  double out_s = 0.0;
  double unknown_s = 0.0;
};
TimeOut time_out(const GroupRange& range, Span time);

/// The longest total known time that any channel of the group is at or above `low`.
struct TimeAbove {
  double longest_s = 0.0;
  std::optional<std::size_t> trace;
  double longest_with_unknown_s = 0.0;  ///< were the channel's unknown time all at or above
};
TimeAbove time_at_or_above(const TraceSet& set, Group group, double low_c, Span time);
/// The same with a range of its own for each member of the group; upper edges do not count.
TimeAbove time_at_or_above(const TraceSet& set, Group group, const GroupRanges& ranges, Span time);

/// The part of `time` between the spans of the neighbouring holds.
Span between_spans(const std::vector<HoldCourse>& holds, std::size_t index, Span record);

/// First entry into the range and last exit from it of one channel within `time`.
struct InAndOut {
  std::optional<double> in_s, out_s;
};
InAndOut in_and_out(const std::vector<RangeSpan>& spans, Span time);

}  // namespace soakwright
