// SPDX-License-Identifier: GPL-3.0-or-later
// How long a hold lasted: what is certain, what is possible, and what adds up out of the range or above its
// lower edge.
#pragma once

#include <optional>
#include <vector>

#include "core/measure/holds/hold_choice.h"

namespace soakwright {

struct HoldTime {
  double certain_s = 0.0;
  std::optional<double> possible_s;  ///< nullopt if a record that starts or ends in the hold leaves it open
  Filled filled;                     ///< the excursions counted in
};

/// `continuous`: the continuous hold, and the time around it in which the group is in or unknown.
/// `accumulated`: all in-range times of the hold, those disregarded included, and all such times around them.
/// With no continuous hold: certain 0, possible the longest unknown time (accumulated: all of it) between the
/// neighbours' continuous holds.
HoldTime hold_time(const std::vector<HoldCourse>& holds, std::size_t index, HoldStage::Count count,
                   Span record);

/// Total time within `time` in which the group is known to be out, and in which it is unknown.
struct TimeOut {
  double out_s = 0.0;
  double unknown_s = 0.0;
};
TimeOut time_out(const GroupRange& range, Span time);

/// One channel's time at or above the lower edge of its range.
struct TimeAbove {
  std::size_t trace = 0;
  double known_s = 0.0;
  double unknown_s = 0.0;  ///< neither known nor excluded
  /// At an end of the record, where `time` reaches it, the channel is at or above the edge, or unknown: it
  /// may have been so outside the record too.
  bool open = false;
};

/// Of each member of the group within `time`, which lies within `record`; upper edges do not count.
std::vector<TimeAbove> times_at_or_above(const TraceSet& set, Group group, const GroupRanges& ranges,
                                         Span time, Span record);

/// The part of the record between the hold periods of the neighbouring holds.
Span between_spans(const std::vector<HoldCourse>& holds, std::size_t index, Span record);

/// First entry into the range and last exit from it of one channel within `time`.
struct InAndOut {
  std::optional<double> in_s, out_s;
};
InAndOut in_and_out(const std::vector<RangeSpan>& spans, Span time);

/// The hold period of a hold, and those of its neighbours.
struct HoldPeriods {
  std::optional<Span> before, own, after;
};
HoldPeriods periods_around(const std::vector<HoldCourse>& holds, std::size_t index);

/// The same for one hold: of the times in range between two hold periods those that are nearer to its own
/// (equal: of the earlier hold). Without a hold period: all between the neighbours'.
InAndOut in_and_out_of_hold(const std::vector<RangeSpan>& spans, const HoldPeriods& periods, Span record);

}  // namespace soakwright
