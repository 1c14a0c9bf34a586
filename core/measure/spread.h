// SPDX-License-Identifier: GPL-3.0-or-later
// Spread: highest minus lowest of the evaluated channels' known temperatures at a row of the log.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/guard.h"
#include "core/measure/traces/row_values.h"

namespace soakwright {

struct MeasuredSpread {
  double at_s = 0.0;
  double kelvin = 0.0;
  std::size_t hottest = 0, coldest = 0;  ///< traces
  double hottest_c = 0.0, coldest_c = 0.0;
  double uncertainty_k = 0.0;  ///< U of the pair; 0 without a guard
  bool surely = false;         ///< some pair of this row is beyond the limit by more than its U
  [[nodiscard]] double held_k() const { return kelvin + uncertainty_k; }
};

/// Rows one after the other whose spread is beyond the limit.
struct WideTime {
  Span time;
  MeasuredSpread widest;
  bool surely = true;  ///< beyond it by more than U at some row
};

struct Spread {
  /// The one that decides: the largest, with a guard the one with the largest spread + U. Nullopt if no
  /// row has two known channels.
  std::optional<MeasuredSpread> widest;
  std::optional<MeasuredSpread> largest;  ///< the largest as measured, whatever its U
  std::vector<WideTime> places;
  bool surely = false;  ///< some pair of some row is beyond the limit by more than its U
};

struct SpecifiedSpread {
  std::optional<double> above_c;   ///< only while the hottest is at or above this
  std::optional<double> within_m;  ///< only channels this close to each other along the work
  std::optional<double> limit_k;   ///< beyond it is a place
  const Guard* guard = nullptr;    ///< with it, spread + U of the pair beyond the limit is a place
};

/// Whether any two channels of the group can be compared: two of them, with `within_m` that close to each
/// other.
bool can_compare(const Record& record, const TraceSet& set, Group group, std::optional<double> within_m);

/// Over the rows that belong to `times` (in order, not overlapping). With `within_m` every channel of the
/// group has a place along the work. With a guard the widest is the pair with the largest spread + U.
Spread measure_spread(const Record& record, const TraceSet& set, Group group, const std::vector<Span>& times,
                      const SpecifiedSpread& specified);

}  // namespace soakwright
