#include "core/measure/trace.h"

#include <algorithm>
#include <limits>

#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

void sum_up_blocks(TraceSource& source) {
  const std::size_t blocks = source.c.size() / TraceSource::kBlock;
  source.block_low.resize(blocks);
  source.block_high.resize(blocks);
  source.block_sum.resize(blocks);
  for (std::size_t b = 0; b < blocks; ++b) {
    const double* c = source.c.data() + b * TraceSource::kBlock;
    // Four at a time, so that one comparison need not wait for the last.
    double low[4] = {c[0], c[1], c[2], c[3]};
    double high[4] = {c[0], c[1], c[2], c[3]};
    double sum[4] = {c[0], c[1], c[2], c[3]};
    for (std::size_t i = 4; i < TraceSource::kBlock; i += 4)
      for (std::size_t k = 0; k < 4; ++k) {
        low[k] = std::min(low[k], c[i + k]);
        high[k] = std::max(high[k], c[i + k]);
        sum[k] += c[i + k];
      }
    source.block_low[b] = std::min({low[0], low[1], low[2], low[3]});
    source.block_high[b] = std::max({high[0], high[1], high[2], high[3]});
    source.block_sum[b] = (sum[0] + sum[1]) + (sum[2] + sum[3]);
  }
}

/// Joined where they overlap, in time order.
std::vector<Span> merged(std::vector<Span> spans) {
  std::sort(spans.begin(), spans.end());
  std::vector<Span> joined;
  for (const Span& span : spans) {
    if (!joined.empty() && span.first <= joined.back().second)
      joined.back().second = std::max(joined.back().second, span.second);
    else
      joined.push_back(span);
  }
  return joined;
}

/// The first of the times (merged) that ends at or after `t`.
std::vector<Span>::const_iterator first_ending_from(const std::vector<Span>& times, double t) {
  return std::lower_bound(times.begin(), times.end(), t,
                          [](const Span& time, double at) { return time.second < at; });
}

/// Whether a sample at `t` belongs to one of the times (merged).
bool any_at(const std::vector<Span>& times, double t) {
  const auto time = first_ending_from(times, t - kSampleSlack_s);
  return time != times.end() && time->first <= t + kSampleSlack_s;
}

/// Whether one of the times (merged) has an instant between two samples.
bool any_between(const std::vector<Span>& times, double from, double to) {
  const auto time = first_ending_from(times, from);
  return time != times.end() && time->first < to;
}

/// Leaves out the readings that are no measurement.
void drop_unmeasured(const Record& record, TraceSource& source, const std::vector<Span>& unmeasured) {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < source.rows.size(); ++i) {
    if (any_at(unmeasured, record.times_s[source.rows[i]])) continue;
    source.rows[kept] = source.rows[i];
    source.own_c[kept] = source.own_c[i];
    ++kept;
  }
  source.rows.resize(kept);
  source.own_c.resize(kept);
}

/// `room` holds what a channel with a reading in every row has; null for others.
TraceSource load_samples(const Record& record, std::size_t channel, double* room,
                         const std::vector<Span>& unmeasured) {
  TraceSource source;
  source.channel = channel;
  source.first_row = record.first_row;
  const Readings& readings = record.channels[channel].readings;
  const std::size_t rows = record.end_row - record.first_row;
  if (room != nullptr) {
    readings.fill_celsius(record.first_row, record.end_row, room);
    source.c = {room, rows};
    source.t = record.evaluated_times_s();
    return source;
  }
  source.own_c.reserve(rows);
  readings.collect(record.first_row, record.end_row, source.rows, source.own_c);
  drop_unmeasured(record, source, unmeasured);
  source.c = source.own_c;
  if (source.c.size() == rows) {
    source.rows = {};
    source.t = record.evaluated_times_s();
    return source;
  }
  source.own_t.reserve(source.rows.size());
  for (const std::uint32_t row : source.rows) source.own_t.push_back(record.times_s[row]);
  source.t = source.own_t;
  return source;
}

TraceSource load_source(const Record& record, std::size_t channel, double* room,
                        const std::vector<Span>& unmeasured) {
  TraceSource source = load_samples(record, channel, room, unmeasured);
  sum_up_blocks(source);
  return source;
}

/// A clock fault lies between the rows of samples i and i + 1.
bool broken_between(const Record& record, const TraceSource& source, std::size_t i) {
  const auto fault = std::lower_bound(record.breaks.begin(), record.breaks.end(), source.row(i));
  return fault != record.breaks.end() && *fault < source.row(i + 1);
}

/// Cuts what lies before `from` off a piece; its first sample then lies behind the cut.
void cut_before(const TraceSource& source, Piece& piece, double from) {
  if (from <= piece.from) return;
  piece.from = from;
  while (piece.first < piece.end && source.t[piece.first] <= from + kWindowSlack_s) ++piece.first;
  while (piece.lead + 1 < piece.trail && source.t[piece.lead + 1] <= from) ++piece.lead;
}

/// Whether a reading at the cut itself stays.
enum class AtCut { dropped, kept };

void cut_after(const TraceSource& source, Piece& piece, double to, AtCut at_cut) {
  if (to >= piece.to) return;
  piece.to = to;
  const double last = at_cut == AtCut::kept ? to + kWindowSlack_s : to - kWindowSlack_s;
  while (piece.end > piece.first &&
         (at_cut == AtCut::kept ? source.t[piece.end - 1] > last : source.t[piece.end - 1] >= last))
    --piece.end;
  while (piece.trail > piece.lead + 1 && source.t[piece.trail - 2] >= to) --piece.trail;
}

/// Runs of samples joined by lines, before anything is excluded. No line crosses a time without measurement.
std::vector<Piece> joined_runs(const Record& record, const TraceSource& source,
                               const std::vector<Span>& unmeasured, double interpolate_max_s) {
  std::vector<Piece> runs;
  const std::size_t n = source.t.size();
  std::size_t first = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const bool joined = i + 1 < n && source.t[i + 1] - source.t[i] <= interpolate_max_s + kWindowSlack_s &&
                        (record.breaks.empty() || !broken_between(record, source, i)) &&
                        !any_between(unmeasured, source.t[i], source.t[i + 1]);
    if (joined) continue;
    runs.push_back({0, source.t[first], source.t[i], first, i + 1, first, i + 1});
    first = i + 1;
  }
  return runs;
}

/// Takes closed in_range out of the runs.
std::vector<Piece> without(const TraceSource& source, std::vector<Piece> runs,
                           const std::vector<Span>& exclusions) {
  for (const auto& [from, to] : exclusions) {
    std::vector<Piece> left;
    for (const Piece& run : runs) {
      if (run.to < from || run.from > to) {
        left.push_back(run);
        continue;
      }
      Piece before = run;
      cut_after(source, before, from, AtCut::dropped);
      if (before.to > before.from && run.from < from) left.push_back(before);
      Piece after = run;
      cut_before(source, after, to);
      if (after.to > after.from && run.to > to) left.push_back(after);
    }
    runs = std::move(left);
  }
  return runs;
}

std::vector<Span> exclusions_of(const Record& record, std::size_t channel) {
  std::vector<Span> spans;
  for (const Exclusion& exclusion : record.exclusions)
    if (exclusion.channel == channel && exclusion.from_s <= record.end_s() &&
        exclusion.to_s >= record.begin_s())
      spans.emplace_back(exclusion.from_s, exclusion.to_s);
  return merged(std::move(spans));
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

Trace own_trace(const Record& record, std::size_t channel, std::vector<Span> unmeasured,
                double interpolate_max_s, bool all_joined, double* room) {
  Trace trace;
  trace.unmeasured = std::move(unmeasured);
  trace.name = record.channels[channel].name;
  trace.channel = channel;
  trace.exclusions = exclusions_of(record, channel);
  trace.sources.push_back(load_source(record, channel, room, trace.unmeasured));
  const TraceSource& source = trace.sources.front();
  const std::size_t n = source.t.size();
  std::vector<Piece> runs = all_joined && source.rows.empty() && trace.unmeasured.empty() && n > 0
                                ? std::vector<Piece>{{0, source.t.front(), source.t.back(), 0, n, 0, n}}
                                : joined_runs(record, source, trace.unmeasured, interpolate_max_s);
  trace.pieces = without(source, std::move(runs), trace.exclusions);
  return trace;
}

/// Puts the spare behind the main trace where that ends for good.
std::optional<TakeOver> take_over(const Record& record, Trace& main, const Trace& spare,
                                  double interpolate_max_s) {
  const bool ever_known = !main.pieces.empty();
  double at = ever_known ? main.pieces.back().to : record.begin_s();
  if (!main.exclusions.empty()) at = std::max(std::min(at, main.exclusions.front().first), record.begin_s());
  if (at >= record.end_s() - kWindowSlack_s) return std::nullopt;

  TakeOver change{main.channel, spare.channel, at, std::nullopt};
  const std::optional<double> main_there = temperature_at(main, at);
  const std::optional<double> spare_there = temperature_at(spare, at);
  if (main_there && spare_there) change.step_k = *spare_there - *main_there;

  // The reading at that instant is the main one's, even where a time_range excluded begins there.
  main.pieces = joined_runs(record, main.sources.front(), main.unmeasured, interpolate_max_s);
  std::erase_if(main.pieces, [&](const Piece& piece) { return piece.from > at; });
  if (!main.pieces.empty()) cut_after(main.sources.front(), main.pieces.back(), at, AtCut::kept);
  main.sources.push_back(spare.sources.front());
  const TraceSource& source = main.sources.back();
  for (Piece piece : spare.pieces) {
    if (piece.to < at || (ever_known && piece.to <= at)) continue;
    piece.source = 1;
    cut_before(source, piece, at);
    main.pieces.push_back(piece);
  }
  main.exclusions.clear();  // none begins before the take-over
  for (Span exclusion : spare.exclusions)
    if (exclusion.second > at) main.exclusions.emplace_back(std::max(exclusion.first, at), exclusion.second);
  main.take_over_s = at;
  return change;
}

bool on_the_work(const Channel& channel) {
  return channel.role == ThermocoupleRole::control || channel.role == ThermocoupleRole::monitor ||
         channel.role == ThermocoupleRole::spare;
}

}  // namespace

TraceSet make_traces(const Record& record, double interpolate_max_s,
                     std::span<const UnmeasuredTime> unmeasured) {
  TraceSet set;
  set.of_channel.assign(record.channels.size(), TraceSet::npos);
  std::vector<std::size_t> channels;
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    if (!on_the_work(record.channels[i])) continue;
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
  set.whole_columns = PageArena(whole * rows * sizeof(double));
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
    if (auto change =
            take_over(record, set.traces[main], set.traces[set.of_channel[channel]], interpolate_max_s))
      set.take_overs.push_back(*change);
  }
  return set;
}

std::optional<double> temperature_at(const Trace& trace, double t) {
  for (const Span& exclusion : trace.exclusions)
    if (t > exclusion.first && t < exclusion.second) return std::nullopt;
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
