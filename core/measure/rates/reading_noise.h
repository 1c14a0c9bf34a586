// SPDX-License-Identifier: GPL-3.0-or-later
// How much readings scatter about the course of the work, from the readings themselves.
//
// Of three consecutive readings let d be the middle one less the line between its neighbours, w where it lies
// between them (0 to 1), and e = d² / (1 + w² + (1 − w)²). For independent errors of variance s² every e is
// s² times a χ² of one degree of freedom: the median of many is 0.4549 s², and neither a spike nor a corner
// of the course moves it (the median of χ²(1): 0.45494, R's qchisq(0.5, 1)). The mean serves where they are
// few.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/measure/rates/window_slopes.h"

namespace soakwright {

/// With fewer triples than these their level is the mean of e, not the median.
inline constexpr std::size_t kFewestForMedian = 16;

/// Collects the triples of any number of parts.
class ReadingNoise {
 public:
  /// The triples within samples [first, end).
  void add(const IntegerSamples& samples, std::size_t first, std::size_t end);
  /// s² in K²; 0 without a triple.
  [[nodiscard]] double level();

 private:
  void add_even(const IntegerSamples& samples, std::size_t first, std::size_t end);
  void count_bend(std::int64_t bend, double unit_k);
  [[nodiscard]] double square_at_place(std::size_t place) const;
  void spread_out_bends();

  /// With two equal steps w is one half and e a whole number squared times unit² / 6: |2b − a − c| counted up
  /// to this, larger ones kept one by one.
  static constexpr std::size_t kCounted = 2048;
  std::vector<std::uint32_t> counts_;
  std::vector<std::int64_t> large_bends_;
  std::size_t bends_ = 0;
  double unit_k_ = 0.0;
  std::vector<double> others_;  ///< e of all other triples, K²
};

/// s² of the triples wholly within samples [first, end), K²; nothing for fewer than kFewestForMedian.
std::optional<double> noise_within(const IntegerSamples& samples, std::size_t first, std::size_t end);

/// A bound on what noise_within() gives for any window of samples [first, end), K².
double noise_bound(const IntegerSamples& samples, std::size_t first, std::size_t end);

}  // namespace soakwright
