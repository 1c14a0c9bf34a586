// SPDX-License-Identifier: GPL-3.0-or-later
// One thermocouple's temperature as a function of time: known on pieces of straight lines, unknown elsewhere.
//
// A trace has one source (its own channel) or two (its channel, then the spare that took over). Between two
// valid samples no further apart than `interpolate_max` the temperature is the line through them; no line
// crosses a clock fault, excluded time, time without measurement or a take-over. Decides nothing about
// limits.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/read/fast/page_arena.h"
#include "core/record/record.h"

namespace soakwright {

/// From, to in seconds.
using Span = std::pair<double, double>;

/// A sample belongs to a time when it lies within this of it, in seconds.
inline constexpr double kSampleSlack_s = 1e-3;
/// Slack on the ends of fit windows and on joining, in seconds.
inline constexpr double kWindowSlack_s = 1e-6;
/// Slack against levels and limits, in degrees Celsius and degrees Celsius per hour.
inline constexpr double kTemperatureSlack = 1e-6;

/// The valid samples of one channel in the evaluated rows.
struct TraceSource {
  std::size_t channel = 0;           ///< index into Record::channels
  std::span<const double> t;         ///< seconds, strictly rising
  std::span<const double> c;         ///< degrees Celsius
  std::vector<std::uint32_t> rows;   ///< record row of each sample; empty where the rows are complete
  std::size_t first_row = 0;         ///< row of sample 0 where `rows` is empty
  std::vector<double> own_t, own_c;  ///< storage behind `t` and `c` where rows are missing
  /// Lowest, highest and sum of samples [b * kBlock, (b + 1) * kBlock): whole blocks are passed over where
  /// nothing happens.
  static constexpr std::size_t kBlock = 64;
  std::vector<double> block_low, block_high, block_sum;
  [[nodiscard]] std::size_t row(std::size_t sample) const {
    return rows.empty() ? first_row + sample : rows[sample];
  }
};

/// A time of one source in which the temperature is known: lines through samples [lead, trail), of which
/// [first, end) lie within and count. from == to is a reading with no line on either side.
struct Piece {
  std::size_t source = 0;
  double from = 0.0;
  double to = 0.0;
  std::size_t first = 0, end = 0;
  std::size_t lead = 0, trail = 0;
};

struct Trace {
  std::string name;
  std::size_t channel = 0;  ///< the main channel
  std::vector<TraceSource> sources;
  std::vector<Piece> pieces;  ///< in time order
  /// Each reaches out to the channel's readings beside it, which stay; on a side without one, as typed.
  std::vector<Span> exclusions;
  /// Times of the main channel whose readings are no measurement, as given to make_traces, merged.
  std::vector<Span> unmeasured;
  std::optional<double> take_over_s;
  /// Excluded from the record's start, to its end: the first, the last reading left is none of the record.
  bool excluded_from_start = false, excluded_to_end = false;
};

/// A spare that took over from its channel.
struct TakeOver {
  std::size_t channel = 0;
  std::size_t spare = 0;
  double at_s = 0.0;
  std::optional<double> step_k;  ///< the spare's less the main one's there
};

struct TraceSet {
  std::vector<Trace> traces;            ///< evaluated, spare and edge channels, in the log's order
  std::vector<std::size_t> of_channel;  ///< trace of a channel, or npos
  std::vector<TakeOver> take_overs;
  PageArena whole_columns;  ///< storage behind TraceSource::c of channels with a reading in every row
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);
};

/// A time of one channel whose readings, both ends included, are no measurement (the junction was open, the
/// input stuck). The channel is unknown there, not excluded, and no line crosses it.
struct UnmeasuredTime {
  std::size_t channel = 0;  ///< index into Record::channels
  double from_s = 0.0;
  double to_s = 0.0;
  friend bool operator==(const UnmeasuredTime&, const UnmeasuredTime&) = default;
};

/// Traces of every channel on the work (evaluated, spare, edge), spares taken over into their channel's.
/// `unmeasured` may come in any order and overlap.
TraceSet make_traces(const Record& record, double interpolate_max_s,
                     std::span<const UnmeasuredTime> unmeasured = {});

/// The temperature at `t`; nullopt if unknown or excluded.
std::optional<double> temperature_at(const Trace& trace, double t);

/// Times within [from, to] in which the trace is neither known nor excluded, longer than the window slack; a
/// reading with no line on either side divides one.
std::vector<Span> unknown_spans(const Trace& trace, double from, double to);

/// On the line through samples i and i + 1.
inline double on_line(const TraceSource& source, std::size_t i, double t) {
  return source.c[i] +
         (source.c[i + 1] - source.c[i]) * ((t - source.t[i]) / (source.t[i + 1] - source.t[i]));
}

/// Counted samples of `piece` that belong to [from, to]: a range of sample numbers.
std::pair<std::size_t, std::size_t> samples_within(const TraceSource& source, const Piece& piece, double from,
                                                   double to);

}  // namespace soakwright
