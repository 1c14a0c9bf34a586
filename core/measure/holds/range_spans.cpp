// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/range_spans.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

/// When the line through samples i and i + 1 is at `level`; its ends lie on different sides of it, or on it.
double crossing(const TraceSource& source, std::size_t i, double level) {
  const double share = std::clamp((level - source.c[i]) / (source.c[i + 1] - source.c[i]), 0.0, 1.0);
  return source.t[i] + share * (source.t[i + 1] - source.t[i]);
}

/// The first sample from `at` on that is not in a whole block of which `dull(lowest, highest)` holds.
template <typename Dull>
std::size_t skip_blocks(const TraceSource& source, std::size_t at, std::size_t trail, Dull dull) {
  while (at % TraceSource::kBlock == 0 && at + TraceSource::kBlock <= trail) {
    const std::size_t block = at / TraceSource::kBlock;
    if (!dull(source.block_low[block], source.block_high[block])) break;
    at += TraceSource::kBlock;
  }
  return at;
}

/// Collects spans of one piece, joining equal neighbours.
class SpanList {
 public:
  SpanList(std::vector<RangeSpan>& spans, const Piece& piece, std::size_t index)
      : spans_(spans), piece_(piece), index_(index), first_(spans.size()), at_(piece.from) {}

  /// The state up to `until` is `state`.
  void add(double until, RangeState state) {
    until = std::clamp(until, at_, piece_.to);
    if (until <= at_) return;
    if (spans_.size() > first_ && spans_.back().state == state)
      spans_.back().to = until;
    else
      spans_.push_back({at_, until, state, index_});
    at_ = until;
  }

 private:
  std::vector<RangeSpan>& spans_;
  const Piece& piece_;
  std::size_t index_;
  std::size_t first_;
  double at_;
};

/// The first place of a piece's lines, from sample `i` on, where a line goes through the level.
enum class Way { rise, fall };

template <Way way>
bool goes_through(double a, double b, double level) {
  const double edge = level - kTemperatureSlack;
  return way == Way::rise ? a < edge && b >= edge : a >= edge && b < edge;
}

template <Way way>
std::optional<double> first_through(const Trace& trace, double level, double after, bool at_counts) {
  for (const Piece& piece : trace.pieces) {
    if (piece.to < after) continue;
    const TraceSource& source = trace.sources[piece.source];
    const auto lead = source.t.begin() + static_cast<std::ptrdiff_t>(piece.lead);
    const auto trail = source.t.begin() + static_cast<std::ptrdiff_t>(piece.trail);
    const auto from = std::upper_bound(lead, trail, after);
    std::size_t i = static_cast<std::size_t>(from - source.t.begin());
    i = i > piece.lead ? i - 1 : piece.lead;
    if (i > piece.lead) --i;  // a sample that lies on `after` ends the line before it
    for (; i + 1 < piece.trail; ++i) {
      const bool under = source.c[i] < level - kTemperatureSlack;
      i = skip_blocks(source, i + 1, piece.trail,
                      [&](double least, double most) {
                        return under ? most < level - kTemperatureSlack : least >= level - kTemperatureSlack;
                      }) -
          1;
      if (i + 1 >= piece.trail) break;
      if (!goes_through<way>(source.c[i], source.c[i + 1], level)) continue;
      const double at = crossing(source, i, level);
      if (at < piece.from || at > piece.to) continue;
      if (at > after || (at_counts && at >= after - kWindowSlack_s)) return at;
    }
  }
  return std::nullopt;
}

template <Way way>
std::optional<double> last_through(const Trace& trace, double level, double before, bool at_counts) {
  for (auto piece = trace.pieces.rbegin(); piece != trace.pieces.rend(); ++piece) {
    if (piece->from > before) continue;
    const TraceSource& source = trace.sources[piece->source];
    const auto lead = source.t.begin() + static_cast<std::ptrdiff_t>(piece->lead);
    const auto trail = source.t.begin() + static_cast<std::ptrdiff_t>(piece->trail);
    auto next = static_cast<std::size_t>(std::lower_bound(lead, trail, before) - source.t.begin());
    next = std::min(next + 1, piece->trail - 1);
    for (std::size_t i = next; i > piece->lead; --i) {
      if (!goes_through<way>(source.c[i - 1], source.c[i], level)) continue;
      const double at = crossing(source, i - 1, level);
      if (at < piece->from || at > piece->to) continue;
      if (at < before || (at_counts && at <= before + kWindowSlack_s)) return at;
    }
  }
  return std::nullopt;
}

}  // namespace

std::vector<RangeSpan> range_spans(const Trace& trace, double low_c, double high_c) {
  return range_spans(trace, SourceRanges{{low_c, high_c}});
}

std::vector<RangeSpan> range_spans(const Trace& trace, const SourceRanges& ranges) {
  std::vector<RangeSpan> spans;
  for (std::size_t index = 0; index < trace.pieces.size(); ++index) {
    const Piece& piece = trace.pieces[index];
    const TraceSource& source = trace.sources[piece.source];
    const auto [low_c, high_c] = range_of_source(ranges, piece.source);
    const double low_edge = low_c - kTemperatureSlack;
    const double high_edge = high_c + kTemperatureSlack;
    const auto state_of = [low_edge, high_edge](double c) {
      return c < low_edge ? RangeState::below : c > high_edge ? RangeState::above : RangeState::in;
    };
    if (piece.from == piece.to) {
      spans.push_back({piece.from, piece.to, state_of(source.c[piece.lead]), index});
      continue;
    }
    SpanList list(spans, piece, index);
    RangeState state = state_of(source.c[piece.lead]);
    for (std::size_t i = piece.lead; i + 1 < piece.trail; ++i) {
      i = skip_blocks(source, i + 1, piece.trail,
                      [&](double least, double most) {
                        return state_of(least) == state && state_of(most) == state;
                      }) -
          1;
      if (i + 1 >= piece.trail) break;
      const RangeState next = state_of(source.c[i + 1]);
      if (next == state) continue;
      const bool rising = next > state;
      if (state != RangeState::in) list.add(crossing(source, i, rising ? low_c : high_c), state);
      if (state == RangeState::in || next != RangeState::in)
        list.add(crossing(source, i, rising ? high_c : low_c), RangeState::in);
      state = next;
    }
    list.add(piece.to, state);
  }
  return spans;
}

std::optional<double> first_rise_through(const Trace& trace, double level_c, double after_s) {
  return first_through<Way::rise>(trace, level_c, after_s, false);
}
std::optional<double> last_rise_through(const Trace& trace, double level_c, double before_s) {
  return last_through<Way::rise>(trace, level_c, before_s, false);
}
std::optional<double> first_fall_through(const Trace& trace, double level_c, double after_s) {
  return first_through<Way::fall>(trace, level_c, after_s, true);
}
std::optional<double> last_fall_through(const Trace& trace, double level_c, double before_s) {
  return last_through<Way::fall>(trace, level_c, before_s, true);
}

}  // namespace soakwright
