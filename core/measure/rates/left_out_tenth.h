// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a window's slope is beyond a bound by more than a few of its readings: a spike fails no run.
#pragma once

#include <cstddef>
#include <vector>

#include "core/measure/rates/window_slopes.h"

namespace soakwright {

/// The length of a tenth of `readings`, rounded down, at least one.
std::size_t tenth_of(std::size_t readings);

/// For any windows of samples [first, end), which must outlive it.
class LeftOutTenth {
 public:
  LeftOutTenth(const IntegerSamples& samples, std::size_t first, std::size_t end);

  /// Whether sign * slope of the window [first, end) is above `bound_c_per_h` whichever consecutive tenth of
  /// its readings is left out; where fewer than three would be left, with all of them.
  [[nodiscard]] bool beyond(std::size_t first, std::size_t end, double sign, double bound_c_per_h);

 private:
  using Sums = window_slopes::Sums<window_slopes::Wide>;

  const IntegerSamples& samples_;
  std::size_t first_;
  std::vector<Sums> running_;  ///< before each sample, all about the first one's time
  /// The first sample of the tenth that last brought a slope down: the same spike is in the next window.
  std::size_t offender_ = 0;
};

}  // namespace soakwright
