// When the group of judged channels is in a hold's band, out of it, or cannot be said to be either.
//
// Out where any judged channel is known to be out, in where all are known to be in, else unknown. A channel
// put aside does not count for that time; with none left the group is unknown.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/measure/band_spans.h"
#include "core/measure/trace.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// The judged channels of one weld: numbers of traces, in the log's order.
using Group = std::span<const std::size_t>;

enum class GroupState : std::uint8_t { in, out, unknown };

struct GroupSpan {
  double from = 0.0;
  double to = 0.0;
  GroupState state = GroupState::unknown;
};

/// The farthest that a judged channel is outside the band, and which.
struct Depth {
  double kelvin = 0.0;
  std::size_t trace = 0;
  double celsius = 0.0;  ///< the reading farthest out
};

/// A time in which the group is known to be out.
struct Departure {
  Span time;
  bool filled = false;  ///< forgiven by `grace`
};

struct GroupBand {
  std::vector<GroupSpan> spans;                 ///< covers the record, neighbours differ
  std::vector<double> lone_outs;                ///< readings out of the band with no line on either side
  std::vector<Span> stretches;                  ///< in, departures within `grace` filled
  std::vector<Departure> departures;            ///< every time out, between stretches or not
  std::vector<std::vector<BandSpan>> channels;  ///< per group member
};

/// Each member of the group has its own band.
using GroupBands = std::vector<LegBands>;

GroupBand group_in_band(const TraceSet& set, Group group, Span record, double low_c, double high_c,
                        const Grace& grace);
GroupBand group_in_band(const TraceSet& set, Group group, Span record, const GroupBands& bands,
                        const Grace& grace);

/// Stretches and departures from the spans again, under another grace.
void fill_departures(GroupBand& band, const TraceSet& set, Group group, const GroupBands& bands,
                     const Grace& grace);

/// The farthest that any channel of the group is outside its band within `time`.
Depth depth_of(const TraceSet& set, Group group, Span time, double low_c, double high_c);
Depth depth_of(const TraceSet& set, Group group, Span time, const GroupBands& bands);

/// The same band for every member.
GroupBands same_band(Group group, Band band);

}  // namespace soakwright
