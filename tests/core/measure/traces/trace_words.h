// SPDX-License-Identifier: GPL-3.0-or-later
// What a trace knows, as text, for tests of traces.
#pragma once

#include <string>
#include <vector>

#include "core/measure/traces/trace.h"
#include "tests/core/measure/traced.h"

namespace soakwright {

/// The temperature at a time as text, "unknown" where there is none.
inline std::string told(const Trace& trace, double t) {
  const auto celsius = temperature_at(trace, t);
  return celsius ? say(*celsius) : "unknown";
}

inline std::string known_times(const Trace& trace) {
  std::vector<Span> times;
  for (const Piece& piece : trace.pieces) times.emplace_back(piece.from, piece.to);
  return say(times);
}

/// The times of the readings that count, piece by piece.
inline std::string counted_readings(const Trace& trace) {
  std::vector<double> times;
  for (const Piece& piece : trace.pieces)
    for (std::size_t i = piece.first; i < piece.end; ++i) times.push_back(trace.sources[piece.source].t[i]);
  return say(times);
}

}  // namespace soakwright
