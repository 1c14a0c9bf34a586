#include "core/measure/band_spans.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

/// When the line through samples i and i + 1 is at `level`; its ends lie on different sides of it, or on it.
double crossing(const Leg& leg, std::size_t i, double level) {
  const double share = std::clamp((level - leg.c[i]) / (leg.c[i + 1] - leg.c[i]), 0.0, 1.0);
  return leg.t[i] + share * (leg.t[i + 1] - leg.t[i]);
}

/// The first sample from `at` on that is not in a whole block of which `dull(lowest, highest)` holds.
template <typename Dull>
std::size_t skip_blocks(const Leg& leg, std::size_t at, std::size_t trail, Dull dull) {
  while (at % Leg::kBlock == 0 && at + Leg::kBlock <= trail) {
    const std::size_t block = at / Leg::kBlock;
    if (!dull(leg.block_low[block], leg.block_high[block])) break;
    at += Leg::kBlock;
  }
  return at;
}

/// Collects spans of one piece, joining equal neighbours.
class SpanList {
 public:
  SpanList(std::vector<BandSpan>& spans, const Piece& piece, std::size_t index)
      : spans_(spans), piece_(piece), index_(index), first_(spans.size()), at_(piece.from) {}

  /// The state up to `until` is `state`.
  void add(double until, BandState state) {
    until = std::clamp(until, at_, piece_.to);
    if (until <= at_) return;
    if (spans_.size() > first_ && spans_.back().state == state)
      spans_.back().to = until;
    else
      spans_.push_back({at_, until, state, index_});
    at_ = until;
  }

 private:
  std::vector<BandSpan>& spans_;
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
    const Leg& leg = trace.legs[piece.leg];
    const auto lead = leg.t.begin() + static_cast<std::ptrdiff_t>(piece.lead);
    const auto trail = leg.t.begin() + static_cast<std::ptrdiff_t>(piece.trail);
    const auto from = std::upper_bound(lead, trail, after);
    std::size_t i = static_cast<std::size_t>(from - leg.t.begin());
    i = i > piece.lead ? i - 1 : piece.lead;
    if (i > piece.lead) --i;  // a sample that lies on `after` ends the line before it
    for (; i + 1 < piece.trail; ++i) {
      const bool under = leg.c[i] < level - kTemperatureSlack;
      i = skip_blocks(leg, i + 1, piece.trail,
                      [&](double least, double most) {
                        return under ? most < level - kTemperatureSlack : least >= level - kTemperatureSlack;
                      }) -
          1;
      if (i + 1 >= piece.trail) break;
      if (!goes_through<way>(leg.c[i], leg.c[i + 1], level)) continue;
      const double at = crossing(leg, i, level);
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
    const Leg& leg = trace.legs[piece->leg];
    const auto lead = leg.t.begin() + static_cast<std::ptrdiff_t>(piece->lead);
    const auto trail = leg.t.begin() + static_cast<std::ptrdiff_t>(piece->trail);
    auto next = static_cast<std::size_t>(std::lower_bound(lead, trail, before) - leg.t.begin());
    next = std::min(next + 1, piece->trail - 1);
    for (std::size_t i = next; i > piece->lead; --i) {
      if (!goes_through<way>(leg.c[i - 1], leg.c[i], level)) continue;
      const double at = crossing(leg, i - 1, level);
      if (at < piece->from || at > piece->to) continue;
      if (at < before || (at_counts && at <= before + kWindowSlack_s)) return at;
    }
  }
  return std::nullopt;
}

}  // namespace

std::vector<BandSpan> band_spans(const Trace& trace, double low_c, double high_c) {
  return band_spans(trace, LegBands{{low_c, high_c}});
}

std::vector<BandSpan> band_spans(const Trace& trace, const LegBands& bands) {
  std::vector<BandSpan> spans;
  for (std::size_t index = 0; index < trace.pieces.size(); ++index) {
    const Piece& piece = trace.pieces[index];
    const Leg& leg = trace.legs[piece.leg];
    const auto [low_c, high_c] = band_of_leg(bands, piece.leg);
    const double low_edge = low_c - kTemperatureSlack;
    const double high_edge = high_c + kTemperatureSlack;
    const auto state_of = [low_edge, high_edge](double c) {
      return c < low_edge ? BandState::below : c > high_edge ? BandState::above : BandState::in;
    };
    if (piece.from == piece.to) {
      spans.push_back({piece.from, piece.to, state_of(leg.c[piece.lead]), index});
      continue;
    }
    SpanList list(spans, piece, index);
    BandState state = state_of(leg.c[piece.lead]);
    for (std::size_t i = piece.lead; i + 1 < piece.trail; ++i) {
      i = skip_blocks(leg, i + 1, piece.trail,
                      [&](double least, double most) {
                        return state_of(least) == state && state_of(most) == state;
                      }) -
          1;
      if (i + 1 >= piece.trail) break;
      const BandState next = state_of(leg.c[i + 1]);
      if (next == state) continue;
      const bool rising = next > state;
      if (state != BandState::in) list.add(crossing(leg, i, rising ? low_c : high_c), state);
      if (state == BandState::in || next != BandState::in)
        list.add(crossing(leg, i, rising ? high_c : low_c), BandState::in);
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
