// SPDX-License-Identifier: GPL-3.0-or-later
// Lowest, highest and mean readings of channels within a time, and the places above a level.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/holds/group_range.h"

namespace soakwright {

struct ReadingAt {
  std::size_t trace = 0;
  double at_s = 0.0;
  double celsius = 0.0;
  std::size_t source = 0;
};

/// The highest (lowest) reading of any channel of the group that belongs to `time`; the first in time, then
/// the first in the log's order of equals.
std::optional<ReadingAt> highest_reading(const TraceSet& set, Group group, Span time);
std::optional<ReadingAt> lowest_reading(const TraceSet& set, Group group, Span time);

/// The same for each trace of the group by itself, and for each source of it that has a reading there.
std::vector<ReadingAt> highest_of_each(const TraceSet& set, Group group, Span time);
std::vector<ReadingAt> lowest_of_each(const TraceSet& set, Group group, Span time);

/// Time of one channel above a level, with its highest reading.
struct HotPlace {
  Span time;
  ReadingAt hottest;
};
std::vector<HotPlace> places_above(const TraceSet& set, Group group, Span time, double level_c);
/// The same for one trace, with a level for each of its sources.
std::vector<HotPlace> places_above(const TraceSet& set, std::size_t trace, Span time,
                                   const std::vector<double>& levels_c);

/// Over the readings of one trace that belong to any of `times`; nullopt if there are none.
struct ReadingSummary {
  double min_c = 0.0, max_c = 0.0, mean_c = 0.0;
};
std::optional<ReadingSummary> summary_of(const Trace& trace, const std::vector<Span>& times);

}  // namespace soakwright
