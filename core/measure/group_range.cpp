#include "core/measure/group_range.h"

#include <algorithm>
#include <limits>

#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

enum class Change : std::uint8_t { out, unknown, exclusion };

struct Event {
  double at = 0.0;
  Change change = Change::out;
  int step = 0;
};

void add_span(std::vector<Event>& events, const Span& span, Change change) {
  events.push_back({span.first, change, +1});
  events.push_back({span.second, change, -1});
}

Span clipped(const Span& span, const Span& to) {
  return {std::max(span.first, to.first), std::min(span.second, to.second)};
}

/// What takes a channel out of the range, or makes it unknown or absent, as changes of counts in time.
std::vector<Event> events_of(const TraceSet& set, Group group, const Span& record, GroupRange& range) {
  std::vector<Event> events;
  for (std::size_t member = 0; member < group.size(); ++member) {
    const Trace& trace = set.traces[group[member]];
    for (const RangeSpan& span : range.channels[member]) {
      if (span.state == RangeState::in) continue;
      if (span.from == span.to)
        range.lone_outs.push_back(span.from);
      else
        add_span(events, {span.from, span.to}, Change::out);
    }
    for (const Span& span : unknown_spans(trace, record.first, record.second))
      add_span(events, span, Change::unknown);
    for (const Span& exclusion : trace.exclusions)
      add_span(events, clipped(exclusion, record), Change::exclusion);
  }
  std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
  std::sort(range.lone_outs.begin(), range.lone_outs.end());
  return events;
}

std::vector<GroupSpan> sweep(const std::vector<Event>& events, std::size_t members, const Span& record) {
  std::vector<GroupSpan> spans;
  std::size_t out = 0;
  std::size_t unknown = 0;
  std::size_t exclusion = 0;
  double at = record.first;
  const auto close = [&](double until) {
    if (until <= at) return;
    const GroupState state = out > 0                               ? GroupState::out
                             : unknown > 0 || exclusion == members ? GroupState::unknown
                                                                   : GroupState::in;
    if (!spans.empty() && spans.back().state == state)
      spans.back().to = until;
    else
      spans.push_back({at, until, state});
    at = until;
  };
  for (std::size_t i = 0; i < events.size();) {
    const double now = events[i].at;
    close(std::clamp(now, record.first, record.second));
    for (; i < events.size() && events[i].at == now; ++i) {
      std::size_t& count = events[i].change == Change::out       ? out
                           : events[i].change == Change::unknown ? unknown
                                                                 : exclusion;
      if (events[i].step > 0)
        ++count;
      else
        --count;
    }
  }
  close(record.second);
  return spans;
}

}  // namespace

GroupRanges same_range(Group group, TemperatureRange range) {
  return GroupRanges(group.size(), SourceRanges{range});
}

Depth depth_of(const TraceSet& set, Group group, Span time, double low_c, double high_c) {
  return depth_of(set, group, time, same_range(group, {low_c, high_c}));
}

Depth depth_of(const TraceSet& set, Group group, Span time, const GroupRanges& ranges) {
  Depth deepest{0.0, group.empty() ? 0 : group.front(), 0.0};
  for (std::size_t member = 0; member < group.size(); ++member) {
    const std::size_t index = group[member];
    const Trace& trace = set.traces[index];
    for (const Piece& piece : trace.pieces) {
      if (piece.to < time.first || piece.from > time.second) continue;
      const TraceSource& source = trace.sources[piece.source];
      const TemperatureRange& range = range_of_source(ranges[member], piece.source);
      const auto look_at = [&](double c) {
        const double outside = std::max(range.low_c - c, c - range.high_c);
        if (outside > deepest.kelvin) deepest = {outside, index, c};
      };
      const auto [first, end] = samples_within(source, piece, time.first, time.second);
      for (std::size_t i = first; i < end;) {
        const std::size_t block = i / TraceSource::kBlock;
        const std::size_t stop = std::min(end, (block + 1) * TraceSource::kBlock);
        // Whole blocks that lie no deeper are passed over.
        if (stop - i < TraceSource::kBlock ||
            std::max(range.low_c - source.block_low[block], source.block_high[block] - range.high_c) >
                deepest.kelvin)
          for (std::size_t k = i; k < stop; ++k) look_at(source.c[k]);
        i = stop;
      }
      for (const double edge : {std::max(time.first, piece.from), std::min(time.second, piece.to)})
        if (const auto c = temperature_at(trace, edge)) look_at(*c);
    }
  }
  return deepest;
}

GroupRange group_in_range(const TraceSet& set, Group group, Span record, double low_c, double high_c,
                          const ExcursionAllowed& excursion_allowed) {
  return group_in_range(set, group, record, same_range(group, {low_c, high_c}), excursion_allowed);
}

GroupRange group_in_range(const TraceSet& set, Group group, Span record, const GroupRanges& ranges,
                          const ExcursionAllowed& excursion_allowed) {
  GroupRange range;
  range.channels.resize(group.size());
  parallel_for(group.size(), [&](std::size_t member) {
    range.channels[member] = range_spans(set.traces[group[member]], ranges[member]);
  });
  const std::vector<Event> events = events_of(set, group, record, range);
  range.spans = sweep(events, group.size(), record);
  fill_excursions(range, set, group, ranges, excursion_allowed);
  return range;
}

void fill_excursions(GroupRange& range, const TraceSet& set, Group group, const GroupRanges& ranges,
                     const ExcursionAllowed& excursion_allowed) {
  range.in_range.clear();
  range.excursions.clear();
  const auto forgiven = [&](std::size_t i) {
    const GroupSpan& out = range.spans[i];
    if (excursion_allowed.time_s <= 0.0 || i == 0 || i + 1 == range.spans.size()) return false;
    if (range.spans[i - 1].state != GroupState::in || range.spans[i + 1].state != GroupState::in)
      return false;
    if (out.to - out.from > excursion_allowed.time_s + kSampleSlack_s) return false;
    return !excursion_allowed.depth || depth_of(set, group, {out.from, out.to}, ranges).kelvin <=
                                           excursion_allowed.depth->kelvin() + kTemperatureSlack;
  };
  bool joins = false;
  for (std::size_t i = 0; i < range.spans.size(); ++i) {
    const GroupSpan& span = range.spans[i];
    if (span.state == GroupState::in) {
      if (joins)
        range.in_range.back().second = span.to;
      else
        range.in_range.emplace_back(span.from, span.to);
    }
    joins = false;
    if (span.state != GroupState::out) continue;
    joins = forgiven(i);
    range.excursions.push_back({{span.from, span.to}, joins});
  }
}

}  // namespace soakwright
