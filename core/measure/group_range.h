// When the group of evaluated channels is in a hold's range, out of it, or cannot be said to be either.
//
// Out where any evaluated channel is known to be out, in where all are known to be in, else unknown. A
// channel excluded does not count for that time; with none left the group is unknown.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/measure/range_spans.h"
#include "core/measure/trace.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// The evaluated channels of one weld: numbers of traces, in the log's order.
using Group = std::span<const std::size_t>;

enum class GroupState : std::uint8_t { in, out, unknown };

struct GroupSpan {
  double from = 0.0;
  double to = 0.0;
  GroupState state = GroupState::unknown;
};

/// The farthest that an evaluated channel is outside the range, and which.
struct Depth {
  double kelvin = 0.0;
  std::size_t trace = 0;
  double celsius = 0.0;  ///< the reading farthest out
};

/// A time in which the group is known to be out.
struct Excursion {
  Span time;
  bool filled = false;  ///< forgiven by `excursion_allowed`
};

struct GroupRange {
  std::vector<GroupSpan> spans;                  ///< covers the record, neighbours differ
  std::vector<double> lone_outs;                 ///< readings out of the range with no line on either side
  std::vector<Span> in_range;                    ///< in, excursions within `excursion_allowed` filled
  std::vector<Excursion> excursions;             ///< every time out, between in_range or not
  std::vector<std::vector<RangeSpan>> channels;  ///< per group member
};

/// Each member of the group has its own range.
using GroupRanges = std::vector<SourceRanges>;

GroupRange group_in_range(const TraceSet& set, Group group, Span record, double low_c, double high_c,
                          const ExcursionAllowed& excursion_allowed);
GroupRange group_in_range(const TraceSet& set, Group group, Span record, const GroupRanges& ranges,
                          const ExcursionAllowed& excursion_allowed);

/// Time ranges and excursions from the spans again, under another excursion_allowed.
void fill_excursions(GroupRange& range, const TraceSet& set, Group group, const GroupRanges& ranges,
                     const ExcursionAllowed& excursion_allowed);

/// The farthest that any channel of the group is outside its range within `time`.
Depth depth_of(const TraceSet& set, Group group, Span time, double low_c, double high_c);
Depth depth_of(const TraceSet& set, Group group, Span time, const GroupRanges& ranges);

/// The same range for every member.
GroupRanges same_range(Group group, TemperatureRange range);

}  // namespace soakwright
