// SPDX-License-Identifier: GPL-3.0-or-later
// Random draws for made-up runs.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>

namespace soakwright::made {

/// Draws that are the same with every standard library.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * unit(); }
  double log_between(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  bool chance(double share) { return unit() < share; }
  std::size_t below(std::size_t n) {
    return std::min(n - 1, static_cast<std::size_t>(unit() * static_cast<double>(n)));
  }
  double normal() {  // Box and Muller 1958
    const double u = std::max(unit(), 1e-300);
    return std::sqrt(-2.0 * std::log(u)) * std::cos(6.283185307179586 * unit());
  }

 private:
  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  std::mt19937_64 engine_;
};

}  // namespace soakwright::made
