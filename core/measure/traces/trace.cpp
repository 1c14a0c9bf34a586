// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/trace.h"

#include <algorithm>
#include <limits>

#include "core/measure/holds/merged_spans.h"
#include "core/measure/traces/spare_take_over.h"
#include "core/measure/traces/trace_source.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

/// A clock fault lies between the rows of samples i and i + 1.
bool broken_between(const Record& record, const TraceSource& source, std::size_t i) {
  const auto fault = std::lower_bound(record.breaks.begin(), record.breaks.end(), source.row(i));
  return fault != record.breaks.end() && *fault < source.row(i + 1);
}

/// What a channel's readings leave out: the times that a person excluded, as typed, and those without
/// measurement.
struct LeftOut {
  std::vector<Span> excluded;
  std::vector<Span> unmeasured;
  [[nodiscard]] bool empty() const { return excluded.empty() && unmeasured.empty(); }
};

/// Runs of samples joined by lines. No line leads to what is left out, nor across it.
std::vector<Piece> joined_runs(const Record& record, const TraceSource& source, const LeftOut& left_out,
                               double interpolate_max_s) {
  std::vector<Piece> runs;
  const std::size_t n = source.t.size();
  const auto is_out = [&](std::size_t i) {
    return !left_out.excluded.empty() && any_at(left_out.excluded, source.t[i]);
  };
  const auto joined = [&](std::size_t i) {
    const double from = source.t[i];
    const double to = source.t[i + 1];
    return to - from <= interpolate_max_s + kWindowSlack_s &&
           (record.breaks.empty() || !broken_between(record, source, i)) &&
           !any_between(left_out.unmeasured, from, to) && !any_between(left_out.excluded, from, to);
  };
  for (std::size_t i = 0; i < n;) {
    if (is_out(i)) {
      ++i;
      continue;
    }
    const std::size_t first = i;
    while (i + 1 < n && joined(i) && !is_out(i + 1)) ++i;
    ++i;
    runs.push_back({0, source.t[first], source.t[i - 1], first, i, first, i});
  }
  return runs;
}

/// What a person excluded of the channel, as typed, within the record's evaluated time.
std::vector<Span> excluded_as_typed(const Record& record, std::size_t channel) {
  std::vector<Span> spans;
  for (const Exclusion& exclusion : record.exclusions)
    if (exclusion.channel == channel && exclusion.from_s <= record.end_s() &&
        exclusion.to_s >= record.begin_s())
      spans.emplace_back(std::max(exclusion.from_s, record.begin_s()),
                         std::min(exclusion.to_s, record.end_s()));
  return merged(std::move(spans));
}

/// Each excluded time out to the last reading left before it and the first one after it.
std::vector<Span> reached_out(const TraceSource& source, const std::vector<Span>& excluded) {
  std::vector<Span> reached;
  const auto& t = source.t;
  for (const Span& span : excluded) {
    Span out = span;
    for (auto i = std::lower_bound(t.begin(), t.end(), span.first); i != t.begin();)
      if (!any_at(excluded, *--i)) {
        out.first = *i;
        break;
      }
    for (auto i = std::upper_bound(t.begin(), t.end(), span.second); i != t.end(); ++i)
      if (!any_at(excluded, *i)) {
        out.second = *i;
        break;
      }
    // Two that meet at a reading stay two: the reading is known.
    if (!reached.empty() && out.first < reached.back().second)
      reached.back().second = std::max(reached.back().second, out.second);
    else
      reached.push_back(out);
  }
  return reached;
}

/// Whether lines join every row to the next.
bool rows_all_joined(const Record& record, double interpolate_max_s) {
  const std::span<const double> times = record.evaluated_times_s();
  double longest = 0.0;
  for (std::size_t i = 1; i < times.size(); ++i) longest = std::max(longest, times[i] - times[i - 1]);
  return record.breaks.empty() && longest <= interpolate_max_s + kWindowSlack_s;
}

/// The times of `channel`.
std::vector<Span> unmeasured_of(std::span<const UnmeasuredTime> unmeasured, std::size_t channel) {
  std::vector<Span> times;
  for (const UnmeasuredTime& time : unmeasured)
    if (time.channel == channel) times.emplace_back(time.from_s, time.to_s);
  return merged(std::move(times));
}

Trace own_trace(const Record& record, std::size_t channel, const std::vector<Span>& unmeasured,
                double interpolate_max_s, bool all_joined, double* room) {
  Trace trace;
  trace.name = record.channels[channel].name;
  trace.channel = channel;
  trace.unmeasured = unmeasured;
  trace.sources.push_back(load_source(record, channel, room, unmeasured));
  const TraceSource& source = trace.sources.front();
  const LeftOut left_out{excluded_as_typed(record, channel), unmeasured};
  const std::size_t n = source.t.size();
  trace.pieces = all_joined && source.rows.empty() && left_out.empty() && n > 0
                     ? std::vector<Piece>{{0, source.t.front(), source.t.back(), 0, n, 0, n}}
                     : joined_runs(record, source, left_out, interpolate_max_s);
  if (left_out.excluded.empty()) return trace;
  trace.exclusions = reached_out(source, left_out.excluded);
  trace.excluded_from_start = left_out.excluded.front().first <= record.begin_s() + kSampleSlack_s;
  trace.excluded_to_end = left_out.excluded.back().second >= record.end_s() - kSampleSlack_s;
  return trace;
}

}  // namespace

TraceSet make_traces(const Record& record, double interpolate_max_s,
                     std::span<const UnmeasuredTime> unmeasured) {
  TraceSet set;
  set.of_channel.assign(record.channels.size(), TraceSet::npos);
  std::vector<std::size_t> channels;
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    if (!on_the_work(record.channels[i].role)) continue;
    set.of_channel[i] = channels.size();
    channels.push_back(i);
  }
  set.traces.resize(channels.size());
  const bool all_joined = rows_all_joined(record, interpolate_max_s);
  const std::size_t rows = record.end_row - record.first_row;
  std::vector<double*> rooms(channels.size(), nullptr);
  std::vector<std::vector<Span>> left_out;
  for (const std::size_t channel : channels) left_out.push_back(unmeasured_of(unmeasured, channel));
  const auto is_whole = [&](std::size_t i) {
    return left_out[i].empty() && record.channels[channels[i]].readings.complete();
  };
  std::size_t whole = 0;
  for (std::size_t i = 0; i < channels.size(); ++i) whole += is_whole(i) ? 1U : 0U;
  set.whole_columns = PageArena(whole * rows * sizeof(double), PageArena::Content::any);
  if (!set.whole_columns.empty()) {
    auto* room = static_cast<double*>(set.whole_columns.data());
    for (std::size_t i = 0; i < channels.size(); ++i) {
      if (!is_whole(i)) continue;
      rooms[i] = room;
      room += rows;
    }
  }
  parallel_for(channels.size(), [&](std::size_t i) {
    set.traces[i] = own_trace(record, channels[i], left_out[i], interpolate_max_s, all_joined, rooms[i]);
  });
  for (const std::size_t channel : channels) {
    const Channel& spare = record.channels[channel];
    if (spare.role != ThermocoupleRole::spare || !spare.spare_for) continue;
    const std::size_t main = set.of_channel[*spare.spare_for];
    if (main == TraceSet::npos || record.channels[*spare.spare_for].role == ThermocoupleRole::spare) continue;
    Trace& other = set.traces[set.of_channel[channel]];
    if (auto change = take_over(record, set.traces[main], other, interpolate_max_s))
      set.take_overs.push_back(*change);
  }
  return set;
}

std::optional<double> temperature_at(const Trace& trace, double t) {
  const auto after = std::upper_bound(trace.pieces.begin(), trace.pieces.end(), t,
                                      [](double at, const Piece& piece) { return at < piece.from; });
  // A take-over leaves two pieces with one instant in common: the earlier one has it.
  for (auto piece = after; piece != trace.pieces.begin();) {
    --piece;
    if (piece->to < t) break;
    if (piece != trace.pieces.begin() && std::prev(piece)->to >= t) continue;
    const TraceSource& source = trace.sources[piece->source];
    const auto lead = source.t.begin() + static_cast<std::ptrdiff_t>(piece->lead);
    const auto trail = source.t.begin() + static_cast<std::ptrdiff_t>(piece->trail);
    const auto next = std::upper_bound(lead, trail, t);
    const auto i = static_cast<std::size_t>(next - source.t.begin());
    if (i == piece->lead) return std::nullopt;
    if (source.t[i - 1] == t || i == piece->trail) return source.c[i - 1];
    return on_line(source, i - 1, t);
  }
  return std::nullopt;
}

std::vector<Span> unknown_spans(const Trace& trace, double from, double to) {
  std::vector<Span> covered;
  covered.reserve(trace.pieces.size() + trace.exclusions.size());
  for (const Piece& piece : trace.pieces) covered.emplace_back(piece.from, piece.to);
  covered.insert(covered.end(), trace.exclusions.begin(), trace.exclusions.end());
  std::sort(covered.begin(), covered.end());
  std::vector<Span> unknown;
  double known_to = from;
  for (const Span& span : covered) {
    if (span.first >= to) break;
    if (span.first > known_to + kWindowSlack_s) unknown.emplace_back(known_to, span.first);
    known_to = std::max(known_to, span.second);
  }
  if (known_to < to - kWindowSlack_s) unknown.emplace_back(known_to, to);
  return unknown;
}

std::pair<std::size_t, std::size_t> samples_within(const TraceSource& source, const Piece& piece, double from,
                                                   double to) {
  const auto first = source.t.begin() + static_cast<std::ptrdiff_t>(piece.first);
  const auto end = source.t.begin() + static_cast<std::ptrdiff_t>(piece.end);
  const auto a = std::lower_bound(first, end, from - kSampleSlack_s);
  const auto b = std::upper_bound(a, end, to + kSampleSlack_s);
  return {static_cast<std::size_t>(a - source.t.begin()), static_cast<std::size_t>(b - source.t.begin())};
}

}  // namespace soakwright
