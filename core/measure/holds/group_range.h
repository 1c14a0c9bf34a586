// SPDX-License-Identifier: GPL-3.0-or-later
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

#include "core/measure/holds/range_spans.h"
#include "core/measure/traces/trace.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// The evaluated channels of one weld: numbers of traces, in the log's order.
using Group = std::span<const std::size_t>;

enum class GroupState : std::uint8_t { in, out, unknown };

struct GroupSpan {
  double from = 0.0;
  double to = 0.0;
  GroupState state = GroupState::unknown;
  /// The member of the group that brought this state about: the last to come in, the first to leave or to
  /// become unknown. Nothing at the record's start.
  std::optional<std::size_t> begun_by;
};

/// The members of the group that began and ended a time in range; nothing at the record's start and end.
struct BegunAndEnded {
  std::optional<std::size_t> begun_by, ended_by;
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
  bool filled = false;  ///< within `excursion_allowed`
};

/// Excursions that were filled.
struct Filled {
  std::size_t count = 0;
  double seconds = 0.0;
};

struct GroupRange {
  /// Covers the record; neighbours differ. Of no length, and out, only at a reading out of the range with no
  /// line on either side.
  std::vector<GroupSpan> spans;
  std::vector<Span> in_range;                    ///< in, excursions within `excursion_allowed` filled
  std::vector<BegunAndEnded> in_range_by;        ///< of each of in_range
  std::vector<Excursion> excursions;             ///< every time out, between in_range or not
  std::vector<std::vector<RangeSpan>> channels;  ///< per group member
};

/// Each member of the group has its own range.
using GroupRanges = std::vector<SourceRanges>;

GroupRange group_in_range(const TraceSet& set, Group group, Span record, double low_c, double high_c,
                          const ExcursionAllowed& excursion_allowed);
GroupRange group_in_range(const TraceSet& set, Group group, Span record, const GroupRanges& ranges,
                          const ExcursionAllowed& excursion_allowed);

/// Number and sum of the excursions filled within `time`.
Filled filled_within(const GroupRange& range, Span time);

/// In-range times and excursions from the spans again, under another excursion_allowed. An excursion is
/// filled only between two times in range; with a depth allowed, only where every channel is known in it.
void fill_excursions(GroupRange& range, const TraceSet& set, Group group, const GroupRanges& ranges,
                     const ExcursionAllowed& excursion_allowed);

/// The farthest that any channel of the group is outside its range within `time`.
Depth depth_of(const TraceSet& set, Group group, Span time, double low_c, double high_c);
Depth depth_of(const TraceSet& set, Group group, Span time, const GroupRanges& ranges);

/// The same range for every member.
GroupRanges same_range(Group group, TemperatureRange range);

}  // namespace soakwright
