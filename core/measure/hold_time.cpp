#include "core/measure/hold_time.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

double overlap(const Span& a, const Span& b) {
  return std::max(0.0, std::min(a.second, b.second) - std::max(a.first, b.first));
}

/// Times in which the group is in or unknown, excursions that were forgiven taken as in; cut at lone readings
/// that are known to be out.
std::vector<Span> possible_times(const GroupRange& range) {
  std::vector<Span> joined;
  auto excursion = range.excursions.begin();
  for (const GroupSpan& span : range.spans) {
    const bool out = span.state == GroupState::out;
    const bool forgiven = out && excursion->filled;
    if (out) ++excursion;  // one excursion for each time out, in order
    if (out && !forgiven) continue;
    if (!joined.empty() && joined.back().second == span.from)
      joined.back().second = span.to;
    else
      joined.emplace_back(span.from, span.to);
  }
  std::vector<Span> times;
  for (const Span& time : joined) {
    double from = time.first;
    for (const double lone : range.lone_outs) {
      if (lone <= from || lone >= time.second) continue;
      const bool within_range = std::any_of(
          range.in_range.begin(), range.in_range.end(),
          [&](const Span& time_range) { return lone > time_range.first && lone < time_range.second; });
      if (within_range) continue;
      times.emplace_back(from, lone);
      from = lone;
    }
    times.emplace_back(from, time.second);
  }
  return times;
}

bool open_ended(const Span& time, const Span& record) {
  return time.first <= record.first + kWindowSlack_s || time.second >= record.second - kWindowSlack_s;
}

HoldTime without_continuous_hold(const std::vector<HoldCourse>& holds, std::size_t index,
                                 HoldStage::Count count, const Span& record) {
  const HoldCourse* before = hold_before(holds, index);
  const HoldCourse* after = hold_after(holds, index);
  const Span between{before != nullptr ? before->continuous->second : record.first,
                     after != nullptr ? after->continuous->first : record.second};
  double longest = 0.0;
  double total = 0.0;
  const GroupRange& range = holds[index].range;
  for (const GroupSpan& span : range.spans) {
    if (span.state != GroupState::unknown) continue;
    const Span part{std::max(span.from, between.first), std::min(span.to, between.second)};
    if (part.second <= part.first) continue;
    total += part.second - part.first;
    double from = part.first;
    for (const double lone : range.lone_outs) {
      if (lone <= from || lone >= part.second) continue;
      longest = std::max(longest, lone - from);
      from = lone;
    }
    longest = std::max(longest, part.second - from);
  }
  return {0.0, count == HoldStage::Count::accumulated ? total : longest};
}

}  // namespace

HoldTime hold_time(const std::vector<HoldCourse>& holds, std::size_t index, HoldStage::Count count,
                   Span record) {
  const HoldCourse& hold = holds[index];
  if (!hold.continuous) return without_continuous_hold(holds, index, count, record);
  std::vector<Span> own{*hold.continuous};
  if (count == HoldStage::Count::accumulated) {
    own = hold.in_range;
    own.insert(own.end(), hold.edge_crossings.begin(), hold.edge_crossings.end());
  }
  HoldTime time;
  for (const Span& time_range : own) time.certain_s += time_range.second - time_range.first;
  double possible = 0.0;
  bool open = false;
  for (const Span& around : possible_times(hold.range)) {
    const bool has_own = std::any_of(
        own.begin(), own.end(), [&](const Span& time_range) { return overlap(time_range, around) > 0.0; });
    if (!has_own) continue;
    possible += around.second - around.first;
    open = open || open_ended(around, record);
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

TimeAbove time_at_or_above(const TraceSet& set, Group group, double low_c, Span time) {
  return time_at_or_above(set, group, same_range(group, {low_c, std::numeric_limits<double>::infinity()}),
                          time);
}

TimeAbove time_at_or_above(const TraceSet& set, Group group, const GroupRanges& ranges, Span time) {
  TimeAbove result;
  for (std::size_t member = 0; member < group.size(); ++member) {
    const std::size_t index = group[member];
    const Trace& trace = set.traces[index];
    SourceRanges upwards = ranges[member];
    for (TemperatureRange& range : upwards) range.high_c = std::numeric_limits<double>::infinity();
    double known = 0.0;
    for (const RangeSpan& span : range_spans(trace, upwards))
      if (span.state == RangeState::in) known += overlap({span.from, span.to}, time);
    double unknown = 0.0;
    for (const Span& span : unknown_spans(trace, time.first, time.second))
      unknown += span.second - span.first;
    if (!result.trace || known > result.longest_s + kWindowSlack_s) {
      result.longest_s = known;
      result.trace = index;
    }
    result.longest_with_unknown_s = std::max(result.longest_with_unknown_s, known + unknown);
  }
  return result;
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

}  // namespace soakwright
