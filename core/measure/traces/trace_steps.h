// SPDX-License-Identifier: GPL-3.0-or-later
// The known steps of a trace, one after the other: straight lines from reading to reading, cut at the ends of
// what is known.
#pragma once

#include <algorithm>
#include <cstddef>

#include "core/measure/traces/trace.h"

namespace soakwright {

struct TraceStep {
  double from_s, to_s;
  double from_c, to_c;
  std::size_t source;
};

class TraceSteps {
 public:
  explicit TraceSteps(const Trace& trace) : trace_(trace) { enter(0); }

  /// False at the end.
  bool next(TraceStep& step) {
    while (piece_ < trace_.pieces.size()) {
      const Piece& piece = trace_.pieces[piece_];
      const TraceSource& source = trace_.sources[piece.source];
      for (; sample_ + 1 < piece.trail;) {
        const std::size_t i = sample_++;
        const double from = std::max(source.t[i], piece.from);
        const double to = std::min(source.t[i + 1], piece.to);
        if (to <= from) continue;
        step = {from, to, from == source.t[i] ? source.c[i] : on_line(source, i, from),
                to == source.t[i + 1] ? source.c[i + 1] : on_line(source, i, to), piece.source};
        return true;
      }
      enter(piece_ + 1);
    }
    return false;
  }

 private:
  void enter(std::size_t piece) {
    piece_ = piece;
    if (piece < trace_.pieces.size()) sample_ = trace_.pieces[piece].lead;
  }

  const Trace& trace_;
  std::size_t piece_ = 0;
  std::size_t sample_ = 0;
};

}  // namespace soakwright
