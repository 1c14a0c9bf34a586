// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/hold_time.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

double overlap(const Span& a, const Span& b) {
  return std::max(0.0, std::min(a.second, b.second) - std::max(a.first, b.first));
}

/// Time between the two; 0 where they touch.
double distance(const RangeSpan& span, const Span& period) {
  return std::max({0.0, period.first - span.to, span.from - period.second});
}

/// A time in which the group is in or unknown; open where the record starts or ends in it.
struct PossibleTime {
  Span time;
  bool open = false;
};

/// Excursions that were filled are taken as in.
std::vector<PossibleTime> possible_times(const GroupRange& range) {
  std::vector<PossibleTime> times;
  auto excursion = range.excursions.begin();
  bool joins = false;
  for (std::size_t i = 0; i < range.spans.size(); ++i) {
    const GroupSpan& span = range.spans[i];
    const bool out = span.state == GroupState::out;
    const bool filled = out && excursion->filled;
    if (out) ++excursion;  // one excursion for each time out, in order
    if (out && !filled) {
      joins = false;
      continue;
    }
    if (!joins) times.push_back({{span.from, span.to}, i == 0});
    joins = true;
    times.back().time.second = span.to;
    if (i + 1 == range.spans.size()) times.back().open = true;
  }
  return times;
}

HoldTime without_continuous_hold(const std::vector<HoldCourse>& holds, std::size_t index,
                                 HoldStage::Count count, const Span& record) {
  const HoldCourse* before = hold_before(holds, index);
  const HoldCourse* after = hold_after(holds, index);
  const Span between{before != nullptr ? before->continuous->second : record.first,
                     after != nullptr ? after->continuous->first : record.second};
  double longest = 0.0;
  double total = 0.0;
  for (const GroupSpan& span : holds[index].range.spans) {
    if (span.state != GroupState::unknown) continue;
    const double unknown = overlap({span.from, span.to}, between);
    total += unknown;
    longest = std::max(longest, unknown);
  }
  return {0.0, count == HoldStage::Count::accumulated ? total : longest, {}};
}

}  // namespace

HoldTime hold_time(const std::vector<HoldCourse>& holds, std::size_t index, HoldStage::Count count,
                   Span record) {
  const HoldCourse& hold = holds[index];
  if (!hold.continuous) return without_continuous_hold(holds, index, count, record);
  const std::vector<Span> own =
      count == HoldStage::Count::accumulated ? hold.all_in_range() : std::vector<Span>{*hold.continuous};
  HoldTime time;
  for (const Span& in_range : own) {
    time.certain_s += in_range.second - in_range.first;
    const Filled filled = filled_within(hold.range, in_range);
    time.filled.count += filled.count;
    time.filled.seconds += filled.seconds;
  }
  double possible = 0.0;
  bool open = false;
  for (const PossibleTime& around : possible_times(hold.range)) {
    const bool has_own = std::any_of(
        own.begin(), own.end(), [&](const Span& in_range) { return overlap(in_range, around.time) > 0.0; });
    if (!has_own) continue;
    possible += around.time.second - around.time.first;
    open = open || around.open;
  }
  if (!open) time.possible_s = possible;
  return time;
}

TimeOut time_out(const GroupRange& range, Span time) {
  TimeOut total;
  for (const GroupSpan& span : range.spans) {
    const double part = overlap({span.from, span.to}, time);
    if (span.state == GroupState::out) total.out_s += part;
    if (span.state == GroupState::unknown) total.unknown_s += part;
  }
  return total;
}

std::vector<TimeAbove> times_at_or_above(const TraceSet& set, Group group, const GroupRanges& ranges,
                                         Span time, Span record) {
  std::vector<TimeAbove> all;
  for (std::size_t member = 0; member < group.size(); ++member) {
    const Trace& trace = set.traces[group[member]];
    SourceRanges upwards = ranges[member];
    for (TemperatureRange& range : upwards) range.high_c = std::numeric_limits<double>::infinity();
    TimeAbove above;
    above.trace = group[member];
    for (const RangeSpan& span : range_spans(trace, upwards)) {
      if (span.state != RangeState::in) continue;
      above.known_s += overlap({span.from, span.to}, time);
      above.open = above.open || (span.from <= record.first && time.first <= record.first) ||
                   (span.to >= record.second && time.second >= record.second);
    }
    for (const Span& span : unknown_spans(trace, time.first, time.second)) {
      above.unknown_s += span.second - span.first;
      above.open = above.open || (span.first <= record.first && !temperature_at(trace, record.first)) ||
                   (span.second >= record.second && !temperature_at(trace, record.second));
    }
    all.push_back(above);
  }
  return all;
}

Span between_spans(const std::vector<HoldCourse>& holds, std::size_t index, Span record) {
  const HoldCourse* before = hold_before(holds, index);
  const HoldCourse* after = hold_after(holds, index);
  return {before != nullptr ? before->period->second : record.first,
          after != nullptr ? after->period->first : record.second};
}

InAndOut in_and_out(const std::vector<RangeSpan>& spans, Span time) {
  InAndOut result;
  for (const RangeSpan& span : spans) {
    if (span.state != RangeState::in || span.to < time.first || span.from > time.second) continue;
    const double from = std::max(span.from, time.first);
    const double to = std::min(span.to, time.second);
    if (to <= from && span.from != span.to) continue;
    if (!result.in_s) result.in_s = from;
    result.out_s = to;
  }
  return result;
}

HoldPeriods periods_around(const std::vector<HoldCourse>& holds, std::size_t index) {
  const HoldCourse* before = hold_before(holds, index);
  const HoldCourse* after = hold_after(holds, index);
  return {before != nullptr ? before->period : std::nullopt, holds[index].period,
          after != nullptr ? after->period : std::nullopt};
}

InAndOut in_and_out_of_hold(const std::vector<RangeSpan>& spans, const HoldPeriods& periods, Span record) {
  const auto& [before, own, after] = periods;
  const Span around{before ? before->second : record.first, after ? after->first : record.second};
  if (!own) return in_and_out(spans, around);
  std::vector<RangeSpan> nearer;
  for (const RangeSpan& span : spans) {
    const double from_own = distance(span, *own);
    const bool is_earlier_hold = before && distance(span, *before) <= from_own;
    const bool is_later_hold = after && distance(span, *after) < from_own;
    if (from_own <= 0.0 || (!is_earlier_hold && !is_later_hold)) nearer.push_back(span);
  }
  return in_and_out(nearer, around);
}

}  // namespace soakwright
