// How much readings scatter about the course of the work, from the readings themselves.
//
// s² is the mean over consecutive triples of d² / (1 + w² + (1 − w)²), where d is the middle reading less the
// line between its neighbours and w is where it lies between them; for independent errors of variance s² that
// quotient has the mean s². Never less than what the last digit alone makes, q²/12.
#pragma once

#include <cstddef>

#include "core/measure/window_slopes.h"

namespace soakwright {

class ReadingNoise {
 public:
  /// The triples within samples [first, end).
  void add(const IntegerSamples& samples, std::size_t first, std::size_t end);
  /// In kelvin; `last_digit_k` is the log's.
  [[nodiscard]] double standard_deviation(double last_digit_k) const;

 private:
  void add_even(const IntegerSamples& samples, std::size_t first, std::size_t end);

  double sum_ = 0.0;  ///< of the quotients, K²
  std::size_t count_ = 0;
};

}  // namespace soakwright
