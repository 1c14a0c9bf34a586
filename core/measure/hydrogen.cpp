// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/hydrogen.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "core/measure/traces/trace_steps.h"

namespace soakwright {
namespace {

using std::numbers::pi;

/// Terms of e to the minus this change nothing in a double.
constexpr double kNegligibleTermExponent = 40.0;
/// Below this F the middle has lost nothing that a double holds (e to the minus 50).
constexpr double kMiddleUntouched = 0.005;
/// Below this F the loss is that of the surface alone, 2 √(F/π) times surface over volume: the next term is
/// F or less of it.
constexpr double kSurfaceAlone = 1e-9;

HydrogenShare plate(double fourier) {
  if (fourier < kSurfaceAlone) return {1.0 - 2.0 * std::sqrt(fourier / pi), 1.0};
  HydrogenShare share{0.0, 0.0};
  for (int n = 0;; ++n) {
    const double odd = 2.0 * n + 1.0;
    const double power = odd * odd * pi * pi * fourier / 4.0;
    if (power > kNegligibleTermExponent) break;
    share.mean += std::exp(-power) / (odd * odd);
    share.centre += (n % 2 == 0 ? 1.0 : -1.0) * std::exp(-power) / odd;
  }
  share.mean *= 8.0 / (pi * pi);
  share.centre = fourier < kMiddleUntouched ? 1.0 : share.centre * 4.0 / pi;
  return share;
}

struct Root {
  double at;  ///< where the Bessel function J0 is zero
  double j1;  ///< J1 there
};

/// The first ten, by the power series in 80 digits.
constexpr std::array<Root, 10> kFirstRoots{{{2.404825557695772768, 0.51914749728946678814},
                                            {5.520078110286310649, -0.3402648065583681485},
                                            {8.653727912911012216, 0.27145229992838192038},
                                            {11.79153443901428161, -0.2324598313647247788},
                                            {14.93091770848778594, 0.20654643307799602682},
                                            {18.07106396791092254, -0.1877288030404394320},
                                            {21.21163662987925895, 0.17326589422922986973},
                                            {24.35247153074930273, -0.1617015506892500044},
                                            {27.49347913204025479, 0.15218121377059453676},
                                            {30.63460646843197511, -0.1441659776863732076}}};

/// Root number `n` from 0; from the eleventh on McMahon's expansion (DLMF 10.21.19) and that of the phase's
/// slope, to 1e-14 and 5e-13.
Root root(std::size_t n) {
  if (n < kFirstRoots.size()) return kFirstRoots[n];
  const double eighth = 8.0 * (static_cast<double>(n) + 0.75) * pi;
  const double u = 1.0 / (eighth * eighth);
  const double at =
      eighth / 8.0 + (1.0 + u * (-124.0 / 3.0 + u * (120928.0 / 15.0 + u * (-401743168.0 / 105.0 +
                                                                            u * 1071187749376.0 / 315.0)))) /
                         eighth;
  const double v = 1.0 / (at * at);
  const double slope = 1.0 + v * (0.125 + v * (-25.0 / 128.0 + v * 1073.0 / 1024.0));
  return {at, (n % 2 == 0 ? 1.0 : -1.0) * std::sqrt(2.0 / (pi * at) * slope)};
}

HydrogenShare cylinder(double fourier) {
  if (fourier < kSurfaceAlone) return {1.0 - 4.0 * std::sqrt(fourier / pi), 1.0};
  HydrogenShare share{0.0, 0.0};
  for (std::size_t n = 0;; ++n) {
    const Root zero = root(n);
    const double power = zero.at * zero.at * fourier;
    if (power > kNegligibleTermExponent) break;
    share.mean += std::exp(-power) / (zero.at * zero.at);
    share.centre += std::exp(-power) / (zero.at * zero.j1);
  }
  share.mean *= 4.0;
  share.centre = fourier < kMiddleUntouched ? 1.0 : 2.0 * share.centre;
  return share;
}

/// Mean D over a straight line from one temperature to another, both in range: Simpson's rule in parts of at
/// most 5 °C; over half a degree the middle is as good (5e-5 where D changes most).
double mean_diffusivity(const DiffusivityLaw& law, double from_c, double to_c) {
  constexpr double kLevel_k = 0.5;
  constexpr double kPart_k = 5.0;
  const double rise = to_c - from_c;
  if (std::fabs(rise) <= kLevel_k) return diffusivity_at(law, from_c + rise / 2.0);
  const double parts = std::ceil(std::fabs(rise) / kPart_k);
  double sum = 0.0;
  for (double part = 0.0; part < parts; ++part) {
    const double a = from_c + rise * (part / parts);
    const double b = from_c + rise * ((part + 1.0) / parts);
    sum += diffusivity_at(law, a) + 4.0 * diffusivity_at(law, (a + b) / 2.0) + diffusivity_at(law, b);
  }
  return sum / 6.0 / parts;
}

/// The share of a line from `from_c` to `to_c` that is below `level_c`.
double share_below(double from_c, double to_c, double level_c) {
  const double least = std::min(from_c, to_c);
  const double most = std::max(from_c, to_c);
  if (level_c <= least) return 0.0;
  if (level_c >= most) return 1.0;
  return (level_c - least) / (most - least);
}

}  // namespace

HydrogenShare hydrogen_left(HydrogenShape shape, double fourier) {
  if (!(fourier > 0.0)) return {};
  return shape == HydrogenShape::plate ? plate(fourier) : cylinder(fourier);
}

Diffused diffused_over(const Trace& trace, Span time, const Diffusivity& diffusivity) {
  Diffused sum;
  const double low = diffusivity.low.celsius();
  const double high = diffusivity.high.celsius();
  TraceSteps steps(trace);
  for (TraceStep step{}; steps.next(step);) {
    const double from_s = std::max(step.from_s, time.first);
    const double to_s = std::min(step.to_s, time.second);
    if (to_s <= from_s) continue;
    const auto at = [&](double t) {
      return step.from_c + (step.to_c - step.from_c) * ((t - step.from_s) / (step.to_s - step.from_s));
    };
    const double seconds = to_s - from_s;
    const double from_c = at(from_s);
    const double to_c = at(to_s);
    const bool level = from_c == to_c;
    const double below_s = seconds * (level ? (from_c < low ? 1.0 : 0.0) : share_below(from_c, to_c, low));
    const double above_s =
        seconds * (level ? (from_c > high ? 1.0 : 0.0) : 1.0 - share_below(from_c, to_c, high));
    const double counted_s = std::max(0.0, seconds - below_s - above_s);
    sum.below_s += below_s;
    sum.above_s += above_s;
    sum.counted_s += counted_s;
    if (counted_s > 0.0)
      sum.integral_m2 += counted_s * mean_diffusivity(diffusivity.law, std::clamp(from_c, low, high),
                                                      std::clamp(to_c, low, high));
  }
  sum.unknown_s = std::max(0.0, time.second - time.first - sum.counted_s - sum.below_s - sum.above_s);
  return sum;
}

}  // namespace soakwright
