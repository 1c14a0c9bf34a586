// SPDX-License-Identifier: GPL-3.0-or-later
// A trace reduced to the points that a line on pdf can show, so that a day of readings at every second
// costs no more than one at every minute.
//
// In each column of the width of a fine line the first, lowest, highest and last reading are kept; then
// points that lie on the straight line between those kept, to within `tolerance_k`, are left out. The trace
// is broken where its readings are further apart than the chart's interpolate_max, at clock faults, and at
// the edges of what was excluded.
#pragma once

#include <vector>

#include "core/report/chart.h"

namespace soakwright::pdf {

struct TracePoint {
  double at_s = 0.0;
  double celsius = 0.0;
};

struct TracePiece {
  bool exclusion = false;  ///< excluded by a person
  std::vector<TracePoint> points;
};

struct Thinning {
  double from_s = 0.0, to_s = 0.0;
  double column_s = 1.0;  ///< width of a column
  double tolerance_k = 0.0;
};

std::vector<TracePiece> thinned(const Chart& chart, std::size_t trace, const Thinning& thinning);

}  // namespace soakwright::pdf
