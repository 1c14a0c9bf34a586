// SPDX-License-Identifier: GPL-3.0-or-later
// Every window of a record, for tests of their slopes.
#pragma once

#include <limits>
#include <vector>

#include "core/measure/rates/window_slopes.h"
#include "tests/core/measure/traced.h"

namespace soakwright {

/// Every window of a one-channel record, over its whole known time.
inline std::vector<WindowSlope> windows_of(const Traced& made, double width_s) {
  const RowTicks ticks = row_ticks(made.record);
  const Trace& trace = made.set.traces[0];
  std::vector<WindowSlope> windows;
  for (const Piece& piece : trace.pieces) {
    const TraceSource& source = trace.sources[piece.source];
    const IntegerSamples samples = integer_samples(made.record, ticks, source, piece.first, piece.end);
    visit_windows(
        source, samples, piece.first, piece.end, {piece.from, piece.to}, width_s, 1.0,
        [](const WindowShape&) { return -std::numeric_limits<double>::infinity(); },
        [&](std::size_t sample, double slope, const WindowShape& shape) {
          windows.push_back(window_about(source, samples, sample, width_s, slope, shape));
        });
  }
  return windows;
}

}  // namespace soakwright
