// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/group_range.h"

#include <algorithm>
#include <limits>

#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

/// An in-range time has some length: crossings of two channels closer than this are one instant, in seconds.
constexpr double kInstant_s = 1e-7;

enum class Change : std::uint8_t { out, unknown, exclusion };

struct Event {
  double at = 0.0;
  Change change = Change::out;
  int step = 0;
  std::size_t member = 0;
};

/// A reading out of the range with no line on either side.
struct LoneOut {
  double at = 0.0;
  std::size_t member = 0;
};

struct Changes {
  std::vector<Event> events;
  std::vector<LoneOut> lone_outs;
};

Span clipped(const Span& span, const Span& to) {
  return {std::max(span.first, to.first), std::min(span.second, to.second)};
}

/// What takes a channel out of the range, or makes it unknown or absent, as changes of counts in time.
Changes changes_of(const TraceSet& set, Group group, const Span& record, const GroupRange& range) {
  Changes changes;
  for (std::size_t member = 0; member < group.size(); ++member) {
    const Trace& trace = set.traces[group[member]];
    const auto add = [&](const Span& span, Change change) {
      changes.events.push_back({span.first, change, +1, member});
      changes.events.push_back({span.second, change, -1, member});
    };
    for (const RangeSpan& span : range.channels[member]) {
      if (span.state == RangeState::in) continue;
      if (span.from == span.to)
        changes.lone_outs.push_back({span.from, member});
      else
        add({span.from, span.to}, Change::out);
    }
    for (const Span& span : unknown_spans(trace, record.first, record.second)) add(span, Change::unknown);
    for (const Span& exclusion : trace.exclusions) add(clipped(exclusion, record), Change::exclusion);
  }
  // Stable: of equals in time the log's order stays.
  std::stable_sort(changes.events.begin(), changes.events.end(),
                   [](const Event& a, const Event& b) { return a.at < b.at; });
  std::stable_sort(changes.lone_outs.begin(), changes.lone_outs.end(),
                   [](const LoneOut& a, const LoneOut& b) { return a.at < b.at; });
  return changes;
}

/// Counts how many channels are out, unknown and excluded while it goes through the events.
class Sweep {
 public:
  Sweep(std::size_t members, const Span& record) : members_(members), record_(record), at_(record.first) {}

  std::vector<GroupSpan> run(const std::vector<Event>& events) {
    for (const Event& event : events) {
      close(std::clamp(event.at, record_.first, record_.second));
      count(event);
    }
    close(record_.second);
    return std::move(spans_);
  }

 private:
  [[nodiscard]] GroupState state() const {
    return out_ > 0                                 ? GroupState::out
           : unknown_ > 0 || exclusion_ == members_ ? GroupState::unknown
                                                    : GroupState::in;
  }

  void close(double until) {
    if (until <= at_ + kInstant_s) return;
    const GroupState now = state();
    if (!spans_.empty() && spans_.back().state == now)
      spans_.back().to = until;
    else
      spans_.push_back({at_, until, now, begun_by(now)});
    at_ = until;
    first_to_leave_.reset();
    last_to_come_.reset();
  }

  /// Who ended the state before: the last channel to come in, or the first to leave the others.
  [[nodiscard]] std::optional<std::size_t> begun_by(GroupState now) const {
    if (spans_.empty()) return std::nullopt;
    const auto& first = now == GroupState::in ? last_to_come_ : first_to_leave_;
    const auto& other = now == GroupState::in ? first_to_leave_ : last_to_come_;
    return first ? first : other;
  }

  void count(const Event& event) {
    std::size_t& count = event.change == Change::out       ? out_
                         : event.change == Change::unknown ? unknown_
                                                           : exclusion_;
    const bool leaves = event.step > 0;
    leaves ? ++count : --count;
    if (event.change == Change::exclusion && exclusion_ != members_ && leaves) return;
    if (leaves) {
      if (!first_to_leave_) first_to_leave_ = event.member;
    } else if (!last_to_come_ || event.at > last_came_at_) {
      last_to_come_ = event.member;
      last_came_at_ = event.at;
    }
  }

  std::size_t members_;
  Span record_;
  double at_;
  std::size_t out_ = 0, unknown_ = 0, exclusion_ = 0;
  std::optional<std::size_t> first_to_leave_, last_to_come_;  ///< since `at_`
  double last_came_at_ = 0.0;
  std::vector<GroupSpan> spans_;
};

/// Puts a time of no length, out, at each lone reading that no time out covers.
std::vector<GroupSpan> with_lone_outs(std::vector<GroupSpan> spans, std::vector<LoneOut> lone_outs) {
  std::erase_if(lone_outs, [&](const LoneOut& lone) {
    return std::any_of(spans.begin(), spans.end(), [&](const GroupSpan& span) {
      return span.state == GroupState::out && span.from <= lone.at && span.to >= lone.at;
    });
  });
  if (lone_outs.empty()) return spans;
  std::vector<GroupSpan> all;
  auto lone = lone_outs.begin();
  for (std::size_t i = 0; i < spans.size(); ++i) {
    GroupSpan rest = spans[i];
    const bool last = i + 1 == spans.size();
    for (; lone != lone_outs.end() && (lone->at < rest.to || last); ++lone) {
      const bool again = !all.empty() && all.back().from == lone->at && all.back().to == lone->at;
      if (again) continue;
      if (lone->at > rest.from) all.push_back({rest.from, lone->at, rest.state, rest.begun_by});
      all.push_back({lone->at, lone->at, GroupState::out, lone->member});
      rest.from = lone->at;
      rest.begun_by = lone->member;
    }
    if (rest.to > rest.from) all.push_back(rest);
  }
  return all;
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
  const Changes changes = changes_of(set, group, record, range);
  range.spans = with_lone_outs(Sweep(group.size(), record).run(changes.events), changes.lone_outs);
  fill_excursions(range, set, group, ranges, excursion_allowed);
  return range;
}

Filled filled_within(const GroupRange& range, Span time) {
  Filled filled;
  for (const Excursion& excursion : range.excursions) {
    if (!excursion.filled || excursion.time.first < time.first || excursion.time.second > time.second)
      continue;
    ++filled.count;
    filled.seconds += excursion.time.second - excursion.time.first;
  }
  return filled;
}

void fill_excursions(GroupRange& range, const TraceSet& set, Group group, const GroupRanges& ranges,
                     const ExcursionAllowed& excursion_allowed) {
  range.in_range.clear();
  range.in_range_by.clear();
  range.excursions.clear();
  const auto all_known = [&](const GroupSpan& out) {
    return std::all_of(group.begin(), group.end(), [&](std::size_t index) {
      return unknown_spans(set.traces[index], out.from, out.to).empty();
    });
  };
  const auto fills = [&](std::size_t i) {
    const GroupSpan& out = range.spans[i];
    if (excursion_allowed.time_s <= 0.0 || i == 0 || i + 1 == range.spans.size()) return false;
    if (range.spans[i - 1].state != GroupState::in || range.spans[i + 1].state != GroupState::in)
      return false;
    if (out.to - out.from > excursion_allowed.time_s + kSampleSlack_s) return false;
    return !excursion_allowed.depth || (depth_of(set, group, {out.from, out.to}, ranges).kelvin <=
                                            excursion_allowed.depth->kelvin() + kTemperatureSlack &&
                                        all_known(out));
  };
  bool joins = false;
  for (std::size_t i = 0; i < range.spans.size(); ++i) {
    const GroupSpan& span = range.spans[i];
    if (span.state == GroupState::in) {
      if (!joins) {
        range.in_range.emplace_back(span.from, span.to);
        range.in_range_by.push_back({span.begun_by, std::nullopt});
      }
      range.in_range.back().second = span.to;
      range.in_range_by.back().ended_by =
          i + 1 < range.spans.size() ? range.spans[i + 1].begun_by : std::nullopt;
    }
    joins = false;
    if (span.state != GroupState::out) continue;
    joins = fills(i);
    range.excursions.push_back({{span.from, span.to}, joins});
  }
}

}  // namespace soakwright
