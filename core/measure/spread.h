// Spread: highest minus lowest of the judged channels' known temperatures at a row of the log.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/row_values.h"

namespace soakwright {

struct MeasuredSpread {
  double at_s = 0.0;
  double kelvin = 0.0;
  std::size_t hottest = 0, coldest = 0;  ///< traces
};

/// Rows one after the other whose spread is beyond the limit.
struct WideTime {
  Span time;
  MeasuredSpread widest;
};

struct Spread {
  std::optional<MeasuredSpread> widest;  ///< nothing where no row has two known channels
  std::vector<WideTime> places;
};

struct SpreadAsked {
  std::optional<double> above_c;   ///< only while the hottest is at or above this
  std::optional<double> within_m;  ///< only channels this close to each other along the work
  std::optional<double> limit_k;   ///< beyond it is a place
};

/// Over the rows that belong to `times` (in order, not overlapping). With `within_m` every channel of the
/// group has a place along the work.
Spread measure_spread(const Record& record, const TraceSet& set, Group group, const std::vector<Span>& times,
                      const SpreadAsked& asked);

}  // namespace soakwright
