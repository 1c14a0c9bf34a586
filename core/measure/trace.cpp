#include "core/measure/trace.h"

#include <algorithm>
#include <limits>

#include "core/measure/side_by_side.h"

namespace soakwright {
namespace {

void sum_up_blocks(Leg& leg) {
  const std::size_t blocks = leg.c.size() / Leg::kBlock;
  leg.block_low.resize(blocks);
  leg.block_high.resize(blocks);
  leg.block_sum.resize(blocks);
  for (std::size_t b = 0; b < blocks; ++b) {
    const double* c = leg.c.data() + b * Leg::kBlock;
    // Four at a time, so that one comparison need not wait for the last.
    double low[4] = {c[0], c[1], c[2], c[3]};
    double high[4] = {c[0], c[1], c[2], c[3]};
    double sum[4] = {c[0], c[1], c[2], c[3]};
    for (std::size_t i = 4; i < Leg::kBlock; i += 4)
      for (std::size_t k = 0; k < 4; ++k) {
        low[k] = std::min(low[k], c[i + k]);
        high[k] = std::max(high[k], c[i + k]);
        sum[k] += c[i + k];
      }
    leg.block_low[b] = std::min({low[0], low[1], low[2], low[3]});
    leg.block_high[b] = std::max({high[0], high[1], high[2], high[3]});
    leg.block_sum[b] = (sum[0] + sum[1]) + (sum[2] + sum[3]);
  }
}

/// `room` holds what a channel with a reading in every row has; null for others.
Leg load_samples(const Record& record, std::size_t channel, double* room) {
  Leg leg;
  leg.channel = channel;
  leg.first_row = record.first_row;
  const Readings& readings = record.channels[channel].readings;
  const std::size_t rows = record.end_row - record.first_row;
  if (room != nullptr) {
    readings.fill_celsius(record.first_row, record.end_row, room);
    leg.c = {room, rows};
    leg.t = record.judged_times_s();
    return leg;
  }
  leg.own_c.reserve(rows);
  readings.collect(record.first_row, record.end_row, leg.rows, leg.own_c);
  leg.c = leg.own_c;
  if (leg.c.size() == rows) {
    leg.rows = {};
    leg.t = record.judged_times_s();
    return leg;
  }
  leg.own_t.reserve(leg.rows.size());
  for (const std::uint32_t row : leg.rows) leg.own_t.push_back(record.times_s[row]);
  leg.t = leg.own_t;
  return leg;
}

Leg load_leg(const Record& record, std::size_t channel, double* room) {
  Leg leg = load_samples(record, channel, room);
  sum_up_blocks(leg);
  return leg;
}

/// A clock fault lies between the rows of samples i and i + 1.
bool broken_between(const Record& record, const Leg& leg, std::size_t i) {
  const auto fault = std::lower_bound(record.breaks.begin(), record.breaks.end(), leg.row(i));
  return fault != record.breaks.end() && *fault < leg.row(i + 1);
}

/// Cuts what lies before `from` off a piece; its first sample then lies behind the cut.
void cut_before(const Leg& leg, Piece& piece, double from) {
  if (from <= piece.from) return;
  piece.from = from;
  while (piece.first < piece.end && leg.t[piece.first] <= from + kWindowSlack_s) ++piece.first;
  while (piece.lead + 1 < piece.trail && leg.t[piece.lead + 1] <= from) ++piece.lead;
}

/// Whether a reading at the cut itself stays.
enum class AtCut { dropped, kept };

void cut_after(const Leg& leg, Piece& piece, double to, AtCut at_cut) {
  if (to >= piece.to) return;
  piece.to = to;
  const double last = at_cut == AtCut::kept ? to + kWindowSlack_s : to - kWindowSlack_s;
  while (piece.end > piece.first &&
         (at_cut == AtCut::kept ? leg.t[piece.end - 1] > last : leg.t[piece.end - 1] >= last))
    --piece.end;
  while (piece.trail > piece.lead + 1 && leg.t[piece.trail - 2] >= to) --piece.trail;
}

/// Runs of samples joined by lines, before anything is put aside.
std::vector<Piece> joined_runs(const Record& record, const Leg& leg, double bridge_s) {
  std::vector<Piece> runs;
  const std::size_t n = leg.t.size();
  std::size_t first = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const bool joined = i + 1 < n && leg.t[i + 1] - leg.t[i] <= bridge_s + kWindowSlack_s &&
                        (record.breaks.empty() || !broken_between(record, leg, i));
    if (joined) continue;
    runs.push_back({0, leg.t[first], leg.t[i], first, i + 1, first, i + 1});
    first = i + 1;
  }
  return runs;
}

/// Takes closed stretches out of the runs.
std::vector<Piece> without(const Leg& leg, std::vector<Piece> runs, const std::vector<Span>& asides) {
  for (const auto& [from, to] : asides) {
    std::vector<Piece> left;
    for (const Piece& run : runs) {
      if (run.to < from || run.from > to) {
        left.push_back(run);
        continue;
      }
      Piece before = run;
      cut_after(leg, before, from, AtCut::dropped);
      if (before.to > before.from && run.from < from) left.push_back(before);
      Piece after = run;
      cut_before(leg, after, to);
      if (after.to > after.from && run.to > to) left.push_back(after);
    }
    runs = std::move(left);
  }
  return runs;
}

std::vector<Span> asides_of(const Record& record, std::size_t channel) {
  std::vector<Span> spans;
  for (const Aside& aside : record.asides)
    if (aside.channel == channel && aside.from_s <= record.end_s() && aside.to_s >= record.begin_s())
      spans.emplace_back(aside.from_s, aside.to_s);
  std::sort(spans.begin(), spans.end());
  std::vector<Span> merged;
  for (const Span& span : spans) {
    if (!merged.empty() && span.first <= merged.back().second)
      merged.back().second = std::max(merged.back().second, span.second);
    else
      merged.push_back(span);
  }
  return merged;
}

/// Whether lines join every row to the next.
bool rows_all_joined(const Record& record, double bridge_s) {
  const std::span<const double> times = record.judged_times_s();
  double longest = 0.0;
  for (std::size_t i = 1; i < times.size(); ++i) longest = std::max(longest, times[i] - times[i - 1]);
  return record.breaks.empty() && longest <= bridge_s + kWindowSlack_s;
}

Trace own_trace(const Record& record, std::size_t channel, double bridge_s, bool all_joined, double* room) {
  Trace trace;
  trace.name = record.channels[channel].name;
  trace.channel = channel;
  trace.asides = asides_of(record, channel);
  trace.legs.push_back(load_leg(record, channel, room));
  const Leg& leg = trace.legs.front();
  const std::size_t n = leg.t.size();
  std::vector<Piece> runs = all_joined && leg.rows.empty() && n > 0
                                ? std::vector<Piece>{{0, leg.t.front(), leg.t.back(), 0, n, 0, n}}
                                : joined_runs(record, leg, bridge_s);
  trace.pieces = without(leg, std::move(runs), trace.asides);
  return trace;
}

/// Puts the spare behind the main trace where that ends for good.
std::optional<TakeOver> take_over(const Record& record, Trace& main, const Trace& spare, double bridge_s) {
  const bool ever_known = !main.pieces.empty();
  double at = ever_known ? main.pieces.back().to : record.begin_s();
  if (!main.asides.empty()) at = std::max(std::min(at, main.asides.front().first), record.begin_s());
  if (at >= record.end_s() - kWindowSlack_s) return std::nullopt;

  TakeOver change{main.channel, spare.channel, at, std::nullopt};
  const std::optional<double> main_there = temperature_at(main, at);
  const std::optional<double> spare_there = temperature_at(spare, at);
  if (main_there && spare_there) change.step_k = *spare_there - *main_there;

  // The reading at that instant is the main one's, even where a stretch put aside begins there.
  main.pieces = joined_runs(record, main.legs.front(), bridge_s);
  std::erase_if(main.pieces, [&](const Piece& piece) { return piece.from > at; });
  if (!main.pieces.empty()) cut_after(main.legs.front(), main.pieces.back(), at, AtCut::kept);
  main.legs.push_back(spare.legs.front());
  const Leg& leg = main.legs.back();
  for (Piece piece : spare.pieces) {
    if (piece.to < at || (ever_known && piece.to <= at)) continue;
    piece.leg = 1;
    cut_before(leg, piece, at);
    main.pieces.push_back(piece);
  }
  main.asides.clear();  // none begins before the take-over
  for (Span aside : spare.asides)
    if (aside.second > at) main.asides.emplace_back(std::max(aside.first, at), aside.second);
  main.take_over_s = at;
  return change;
}

bool on_the_work(const Channel& channel) {
  return channel.duty == Duty::control || channel.duty == Duty::monitor || channel.duty == Duty::spare;
}

}  // namespace

TraceSet make_traces(const Record& record, double bridge_s) {
  TraceSet set;
  set.of_channel.assign(record.channels.size(), TraceSet::npos);
  std::vector<std::size_t> channels;
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    if (!on_the_work(record.channels[i])) continue;
    set.of_channel[i] = channels.size();
    channels.push_back(i);
  }
  set.traces.resize(channels.size());
  const bool all_joined = rows_all_joined(record, bridge_s);
  const std::size_t rows = record.end_row - record.first_row;
  std::vector<double*> rooms(channels.size(), nullptr);
  std::size_t whole = 0;
  for (const std::size_t channel : channels) whole += record.channels[channel].readings.complete() ? 1U : 0U;
  set.whole_columns = PageArena(whole * rows * sizeof(double));
  if (!set.whole_columns.empty()) {
    auto* room = static_cast<double*>(set.whole_columns.data());
    for (std::size_t i = 0; i < channels.size(); ++i) {
      if (!record.channels[channels[i]].readings.complete()) continue;
      rooms[i] = room;
      room += rows;
    }
  }
  side_by_side(channels.size(), [&](std::size_t i) {
    set.traces[i] = own_trace(record, channels[i], bridge_s, all_joined, rooms[i]);
  });
  for (const std::size_t channel : channels) {
    const Channel& spare = record.channels[channel];
    if (spare.duty != Duty::spare || !spare.spare_for) continue;
    const std::size_t main = set.of_channel[*spare.spare_for];
    if (main == TraceSet::npos || record.channels[*spare.spare_for].duty == Duty::spare) continue;
    if (auto change = take_over(record, set.traces[main], set.traces[set.of_channel[channel]], bridge_s))
      set.take_overs.push_back(*change);
  }
  return set;
}

std::optional<double> temperature_at(const Trace& trace, double t) {
  for (const Span& aside : trace.asides)
    if (t > aside.first && t < aside.second) return std::nullopt;
  const auto after = std::upper_bound(trace.pieces.begin(), trace.pieces.end(), t,
                                      [](double at, const Piece& piece) { return at < piece.from; });
  // A take-over leaves two pieces with one instant in common: the earlier one has it.
  for (auto piece = after; piece != trace.pieces.begin();) {
    --piece;
    if (piece->to < t) break;
    if (piece != trace.pieces.begin() && std::prev(piece)->to >= t) continue;
    const Leg& leg = trace.legs[piece->leg];
    const auto lead = leg.t.begin() + static_cast<std::ptrdiff_t>(piece->lead);
    const auto trail = leg.t.begin() + static_cast<std::ptrdiff_t>(piece->trail);
    const auto next = std::upper_bound(lead, trail, t);
    const auto i = static_cast<std::size_t>(next - leg.t.begin());
    if (i == piece->lead) return std::nullopt;
    if (leg.t[i - 1] == t || i == piece->trail) return leg.c[i - 1];
    return on_line(leg, i - 1, t);
  }
  return std::nullopt;
}

std::vector<Span> unknown_spans(const Trace& trace, double from, double to) {
  std::vector<Span> covered;
  covered.reserve(trace.pieces.size() + trace.asides.size());
  for (const Piece& piece : trace.pieces) covered.emplace_back(piece.from, piece.to);
  covered.insert(covered.end(), trace.asides.begin(), trace.asides.end());
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

std::pair<std::size_t, std::size_t> samples_within(const Leg& leg, const Piece& piece, double from,
                                                   double to) {
  const auto first = leg.t.begin() + static_cast<std::ptrdiff_t>(piece.first);
  const auto end = leg.t.begin() + static_cast<std::ptrdiff_t>(piece.end);
  const auto a = std::lower_bound(first, end, from - kSampleSlack_s);
  const auto b = std::upper_bound(a, end, to + kSampleSlack_s);
  return {static_cast<std::size_t>(a - leg.t.begin()), static_cast<std::size_t>(b - leg.t.begin())};
}

}  // namespace soakwright
