// SPDX-License-Identifier: GPL-3.0-or-later
// What the chart draws below the temperatures, and what can be measured between two moments: the rate of each
// thermocouple and the spread between them over time, with the limits that they were held to, and the
// difference of each channel from one of them.
//
// Rates are those of the evaluation: slopes of the least-squares window about each reading, of the
// procedure's width. Nothing is decided here.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/analysis.h"
#include "core/record/readings.h"

namespace soakwright {

/// A limit over the time for which it was evaluated.
struct CurveLimit {
  double from_s = 0.0, to_s = 0.0;
  double value = 0.0;  ///< C/h, positive when heating; K of spread
  std::string id;      ///< of the requirement
};

/// Between the hottest and the coldest of the evaluated thermocouples of one weld.
struct SpreadCurve {
  std::optional<std::string> weld;
  Readings kelvin;  ///< by row of the record; missing where fewer than two are known
};

struct ChartCurves {
  double window_s = 0.0;        ///< width of the fits
  std::vector<Readings> rates;  ///< C/h, by channel; no rows where the channel has no rate
  /// K, by channel: its reading less the reference's in the same row; no rows where it has no readings.
  std::vector<Readings> differences;
  std::vector<SpreadCurve> spreads;
  std::vector<CurveLimit> rate_limits, spread_limits;
};

/// Each takes long to work out and as much memory as the record; spreads and limits are there without them.
struct WantedCurves {
  bool rates = true;
  std::optional<std::size_t> differences_from;  ///< the channel of reference
  bool operator==(const WantedCurves&) const = default;
};

/// `analysis.record` must be there. Long for a large record.
ChartCurves chart_curves(const Analysis& analysis, const WantedCurves& wanted = {});

/// One channel between two moments. What is not known is not given.
struct BetweenChannel {
  std::size_t channel = 0;
  std::optional<double> from_c, to_c;
  std::optional<double> difference_k;
  std::optional<double> mean_rate;      ///< C/h
  std::optional<double> steepest_rate;  ///< C/h, of the windows that lie wholly between the two
};

struct Between {
  double from_s = 0.0, to_s = 0.0;
  std::vector<BetweenChannel> channels;              ///< every channel of the record, in its order
  std::optional<double> from_spread_k, to_spread_k;  ///< of the evaluated channels
};

/// Between two moments in either order. `curves` may be null: then no steepest rate is given.
Between measure_between(const Analysis& analysis, const ChartCurves* curves, double a_s, double b_s);

}  // namespace soakwright
