// SPDX-License-Identifier: GPL-3.0-or-later
// Estimates that a minority of wild values does not move: median, spread about it, a straight line.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace soakwright {

/// Median; 0 of nothing.
double median_of(std::vector<double> values);

/// Standard deviation of the readings' noise, from second differences of evenly spaced values, by the median
/// of their sizes, so that corners and steps do not count.
double noise_of(std::span<const double> values);

/// A straight line y = at_origin + slope * (t - origin_s).
struct Line {
  double origin_s = 0.0;
  double at_origin = 0.0;
  double slope = 0.0;  ///< per second
  [[nodiscard]] double at(double time_s) const { return at_origin + slope * (time_s - origin_s); }
};

/// Line with the median of all pairwise slopes (Theil 1950, Sen 1968); long runs are thinned out first.
Line robust_line(std::span<const double> times_s, std::span<const double> values);

}  // namespace soakwright
