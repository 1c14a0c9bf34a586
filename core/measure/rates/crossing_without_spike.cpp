// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/crossing_without_spike.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>

namespace soakwright {
namespace {

struct ReadingAt {
  double t = 0.0;  ///< counted outward
  double c = 0.0;
};

/// Readings beside the crossing, by their place outward of it: 0 is the first beyond, -1 the last before.
class Beside {
 public:
  Beside(const TraceSource& source, const Piece& piece, double at_s, Outward outward)
      : source_(source), piece_(piece), outward_(outward) {
    const auto begin = source.t.begin();
    const auto first = begin + static_cast<std::ptrdiff_t>(piece.lead);
    const auto last = begin + static_cast<std::ptrdiff_t>(piece.trail);
    beyond_ = outward == Outward::later ? std::lower_bound(first, last, at_s) - begin
                                        : std::upper_bound(first, last, at_s) - begin - 1;
  }
  [[nodiscard]] std::optional<ReadingAt> at(std::ptrdiff_t place) const {
    const std::ptrdiff_t sample = beyond_ + (outward_ == Outward::later ? place : -place);
    if (sample < static_cast<std::ptrdiff_t>(piece_.lead) ||
        sample >= static_cast<std::ptrdiff_t>(piece_.trail))
      return std::nullopt;
    const auto i = static_cast<std::size_t>(sample);
    return ReadingAt{outward_ == Outward::later ? source_.t[i] : -source_.t[i], source_.c[i]};
  }

 private:
  const TraceSource& source_;
  const Piece& piece_;
  Outward outward_;
  std::ptrdiff_t beyond_ = 0;
};

/// Where the line through both reaches `level_c`, from `a` on; nullopt if it does not.
std::optional<double> reached(const std::optional<ReadingAt>& a, const std::optional<ReadingAt>& b,
                              double level_c) {
  if (!a || !b || a->c == b->c) return std::nullopt;
  const double t = a->t + (level_c - a->c) * (b->t - a->t) / (b->c - a->c);
  return t >= a->t ? std::optional(t) : std::nullopt;
}

std::optional<double> sooner(std::optional<double> one, std::optional<double> other) {
  if (!one || !other) return one ? one : other;
  return std::min(*one, *other);
}

}  // namespace

double crossing_without_spike(const Trace& trace, double at_s, double level_c, Outward outward) {
  for (const Piece& piece : trace.pieces) {
    if (at_s < piece.from || at_s > piece.to) continue;
    const Beside beside(trace.sources[piece.source], piece, at_s, outward);
    const auto without_beyond =
        sooner(reached(beside.at(-2), beside.at(-1), level_c), reached(beside.at(-1), beside.at(1), level_c));
    const auto without_before =
        sooner(reached(beside.at(-3), beside.at(-2), level_c), reached(beside.at(-2), beside.at(0), level_c));
    const double sign = outward == Outward::later ? 1.0 : -1.0;
    double farthest = sign * at_s;
    for (const auto& crossing : {without_beyond, without_before})
      if (crossing) farthest = std::max(farthest, *crossing);
    return sign * farthest;
  }
  return at_s;
}

}  // namespace soakwright
