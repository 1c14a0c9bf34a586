#include "core/measure/group_band.h"

#include <algorithm>
#include <limits>

#include "core/measure/side_by_side.h"

namespace soakwright {
namespace {

enum class Change : std::uint8_t { out, unknown, aside };

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

/// What takes a channel out of the band, or makes it unknown or absent, as changes of counts in time.
std::vector<Event> events_of(const TraceSet& set, Group group, const Span& record, GroupBand& band) {
  std::vector<Event> events;
  for (std::size_t member = 0; member < group.size(); ++member) {
    const Trace& trace = set.traces[group[member]];
    for (const BandSpan& span : band.channels[member]) {
      if (span.state == BandState::in) continue;
      if (span.from == span.to)
        band.lone_outs.push_back(span.from);
      else
        add_span(events, {span.from, span.to}, Change::out);
    }
    for (const Span& span : unknown_spans(trace, record.first, record.second))
      add_span(events, span, Change::unknown);
    for (const Span& aside : trace.asides) add_span(events, clipped(aside, record), Change::aside);
  }
  std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
  std::sort(band.lone_outs.begin(), band.lone_outs.end());
  return events;
}

std::vector<GroupSpan> sweep(const std::vector<Event>& events, std::size_t members, const Span& record) {
  std::vector<GroupSpan> spans;
  std::size_t out = 0;
  std::size_t unknown = 0;
  std::size_t aside = 0;
  double at = record.first;
  const auto close = [&](double until) {
    if (until <= at) return;
    const GroupState state = out > 0                           ? GroupState::out
                             : unknown > 0 || aside == members ? GroupState::unknown
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
                                                                 : aside;
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

GroupBands same_band(Group group, Band band) { return GroupBands(group.size(), LegBands{band}); }

Depth depth_of(const TraceSet& set, Group group, Span time, double low_c, double high_c) {
  return depth_of(set, group, time, same_band(group, {low_c, high_c}));
}

Depth depth_of(const TraceSet& set, Group group, Span time, const GroupBands& bands) {
  Depth deepest{0.0, group.empty() ? 0 : group.front(), 0.0};
  for (std::size_t member = 0; member < group.size(); ++member) {
    const std::size_t index = group[member];
    const Trace& trace = set.traces[index];
    for (const Piece& piece : trace.pieces) {
      if (piece.to < time.first || piece.from > time.second) continue;
      const Leg& leg = trace.legs[piece.leg];
      const Band& band = band_of_leg(bands[member], piece.leg);
      const auto look_at = [&](double c) {
        const double outside = std::max(band.low_c - c, c - band.high_c);
        if (outside > deepest.kelvin) deepest = {outside, index, c};
      };
      const auto [first, end] = samples_within(leg, piece, time.first, time.second);
      for (std::size_t i = first; i < end;) {
        const std::size_t block = i / Leg::kBlock;
        const std::size_t stop = std::min(end, (block + 1) * Leg::kBlock);
        // Whole blocks that lie no deeper are passed over.
        if (stop - i < Leg::kBlock ||
            std::max(band.low_c - leg.block_low[block], leg.block_high[block] - band.high_c) > deepest.kelvin)
          for (std::size_t k = i; k < stop; ++k) look_at(leg.c[k]);
        i = stop;
      }
      for (const double edge : {std::max(time.first, piece.from), std::min(time.second, piece.to)})
        if (const auto c = temperature_at(trace, edge)) look_at(*c);
    }
  }
  return deepest;
}

GroupBand group_in_band(const TraceSet& set, Group group, Span record, double low_c, double high_c,
                        const Grace& grace) {
  return group_in_band(set, group, record, same_band(group, {low_c, high_c}), grace);
}

GroupBand group_in_band(const TraceSet& set, Group group, Span record, const GroupBands& bands,
                        const Grace& grace) {
  GroupBand band;
  band.channels.resize(group.size());
  side_by_side(group.size(), [&](std::size_t member) {
    band.channels[member] = band_spans(set.traces[group[member]], bands[member]);
  });
  const std::vector<Event> events = events_of(set, group, record, band);
  band.spans = sweep(events, group.size(), record);
  fill_departures(band, set, group, bands, grace);
  return band;
}

void fill_departures(GroupBand& band, const TraceSet& set, Group group, const GroupBands& bands,
                     const Grace& grace) {
  band.stretches.clear();
  band.departures.clear();
  const auto forgiven = [&](std::size_t i) {
    const GroupSpan& out = band.spans[i];
    if (grace.time_s <= 0.0 || i == 0 || i + 1 == band.spans.size()) return false;
    if (band.spans[i - 1].state != GroupState::in || band.spans[i + 1].state != GroupState::in) return false;
    if (out.to - out.from > grace.time_s + kSampleSlack_s) return false;
    return !grace.depth || depth_of(set, group, {out.from, out.to}, bands).kelvin <=
                               grace.depth->kelvin() + kTemperatureSlack;
  };
  bool joins = false;
  for (std::size_t i = 0; i < band.spans.size(); ++i) {
    const GroupSpan& span = band.spans[i];
    if (span.state == GroupState::in) {
      if (joins)
        band.stretches.back().second = span.to;
      else
        band.stretches.emplace_back(span.from, span.to);
    }
    joins = false;
    if (span.state != GroupState::out) continue;
    joins = forgiven(i);
    band.departures.push_back({{span.from, span.to}, joins});
  }
}

}  // namespace soakwright
