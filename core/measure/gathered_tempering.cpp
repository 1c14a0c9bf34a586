// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/gathered_tempering.h"

#include <cmath>
#include <cstdint>

// The lanes' loop is written once, in vectors of the compiler, and inlined into a build for any processor and
// one for those with AVX2. Products and sums are never fused, which would round otherwise than a processor
// that cannot. Other compilers carry one lane along after the other.
#if defined(__GNUC__) || defined(__clang__)
#define SOAKWRIGHT_VECTORS 1
#if defined(__x86_64__)
#define SOAKWRIGHT_TWO_BUILDS 1
#endif
#endif

namespace soakwright {
namespace {

constexpr double kLn10 = 2.302585092994045684;

constexpr double kSmall = 0.01;
/// Shares of e to the minus this change nothing in a double.
constexpr double kNegligibleShareExponent = 38.0;
constexpr double kThird = 1.0 / 3, kFifth = 1.0 / 5, kSixth = 1.0 / 6, kSeventh = 1.0 / 7;

/// ln(1 + q) for q from 0 up to kSmall, to 1e-14: the series in pairs, so that few of its terms wait for
/// others. Of a number, or of each in a vector, which other builds than the widest could not hand over as
/// such.
template <typename Number>
inline void small_log1p(const Number& q, Number& logarithm) {
  const Number qq = q * q;
  const Number odd = 1.0 + qq * (kThird + qq * (kFifth + qq * kSeventh));
  const Number even = 0.5 + qq * (0.25 + qq * kSixth);
  logarithm = q * odd - qq * even;
}

}  // namespace

GatheredTempering::GatheredTempering(double constant) : log_constant_(constant * kLn10) {}

void GatheredTempering::add(double celsius, double seconds) {
  const double kelvin = celsius + kZeroCelsius_k;
  if (kelvin <= 0.0 || seconds <= 0.0) return;
  if (seconds != seconds_) {
    seconds_ = seconds;
    log_step_ = log_constant_ + std::log(seconds / 3600.0);
  }
  if (parameter_ > kelvin * (log_step_ + kNegligibleShareExponent)) return;
  const double apart = log_step_ - parameter_ / kelvin;
  if (!any_ || apart > kNegligibleShareExponent) {
    parameter_ = kelvin * log_step_;
    any_ = true;
    return;
  }
  const double share = std::exp(apart);
  double logarithm = 0.0;
  if (share <= kSmall)
    small_log1p(share, logarithm);
  else
    logarithm = std::log1p(share);
  parameter_ += kelvin * logarithm;
}

std::optional<double> GatheredTempering::parameter() const {
  if (!any_) return std::nullopt;
  return parameter_ / kLn10 / 1000.0;
}

#if defined(SOAKWRIGHT_VECTORS)
namespace {

// Between these the loop is free of branches.
constexpr double kLeastApart = -600.0;
constexpr double kMostApart = -4.6051701859880914;  // ln kSmall

#define BODY [[gnu::always_inline]] inline

/// A vector of `kBytes`, and the bits of its numbers.
template <std::size_t kBytes>
struct VectorOf {
  using Numbers [[gnu::vector_size(kBytes)]] = double;
  using Bits [[gnu::vector_size(kBytes)]] = std::int64_t;
};

/// e to the x for each x from kLeastApart to 0, to 4e-16 of itself: x = n ln 2 + r with |r| up to ln 2 / 2,
/// the power series of r up to the twelfth in groups of two, and n added to the exponent.
template <std::size_t kBytes>
BODY void exp_below_0(const typename VectorOf<kBytes>::Numbers& x,
                      typename VectorOf<kBytes>::Numbers& power) {
  using Numbers = typename VectorOf<kBytes>::Numbers;
  using Bits = typename VectorOf<kBytes>::Bits;
  constexpr double kLog2OfE = 1.4426950408889634074;
  constexpr double kLn2High = 6.93147180369123816490e-01;  // its last 21 bits are 0: n times it is exact
  constexpr double kLn2Low = 1.90821492927058770002e-10;
  constexpr double kRounds =
      6755399441055744.0;  // 1.5 * 2^52: added, it leaves a whole number in the low bits
  const Numbers shifted = x * kLog2OfE + kRounds;
  const Numbers n = shifted - kRounds;
  const Numbers r = (x - n * kLn2High) - n * kLn2Low;
  const Numbers rr = r * r;
  const Numbers r4 = rr * rr;
  const Numbers first = (1.0 + r) + rr * (1.0 / 2 + r * (1.0 / 6));
  const Numbers second = (1.0 / 24 + r * (1.0 / 120)) + rr * (1.0 / 720 + r * (1.0 / 5040));
  const Numbers third = (1.0 / 40320 + r * (1.0 / 362880)) + rr * (1.0 / 3628800 + r * (1.0 / 39916800)) +
                        r4 * (1.0 / 479001600);
  const Numbers series = first + r4 * (second + r4 * third);
  power = reinterpret_cast<Numbers>(reinterpret_cast<Bits>(series) + (reinterpret_cast<Bits>(shifted) << 52));
}

}  // namespace

class GatheredLanes {
 public:
  template <std::size_t kBytes>
  BODY static std::array<GatheredTempering, kTemperingLanes> over(
      std::span<const double> times_s, const std::array<const double*, kTemperingLanes>& celsius,
      double constant) {
    using Numbers = typename VectorOf<kBytes>::Numbers;
    using Bits = typename VectorOf<kBytes>::Bits;
    constexpr std::size_t kWidth = kBytes / sizeof(double);
    constexpr std::size_t kVectors = kTemperingLanes / kWidth;
    static_assert(kVectors * kWidth == kTemperingLanes);

    std::array<GatheredTempering, kTemperingLanes> lanes;
    lanes.fill(GatheredTempering(constant));
    const double log_constant = lanes.front().log_constant_;
    Numbers parameter[kVectors] = {};
    Numbers before[kVectors];
    for (std::size_t v = 0; v < kVectors; ++v)
      for (std::size_t k = 0; k < kWidth; ++k) before[v][k] = celsius[v * kWidth + k][0];
    double seconds = 0.0;
    double log_step = 0.0;
    for (std::size_t i = 0; i + 1 < times_s.size(); ++i) {
      if (const double step = times_s[i + 1] - times_s[i]; step != seconds) {
        seconds = step;
        log_step = log_constant + std::log(step / 3600.0);
      }
      Numbers mean[kVectors];
      Numbers kelvin[kVectors];
      Numbers apart[kVectors];
      Bits outside = {};
      for (std::size_t v = 0; v < kVectors; ++v) {
        Numbers here;
        for (std::size_t k = 0; k < kWidth; ++k) here[k] = celsius[v * kWidth + k][i + 1];
        mean[v] = (before[v] + here) / 2.0;
        before[v] = here;
        kelvin[v] = mean[v] + kZeroCelsius_k;
        apart[v] = log_step - parameter[v] / kelvin[v];
        outside |= ~((apart[v] >= kLeastApart) & (apart[v] <= kMostApart));
      }
      std::int64_t any = 0;
      for (std::size_t k = 0; k < kWidth; ++k) any |= outside[k];
      // Nearly all steps are a small share of what is gathered, in every lane.
      if (any == 0) {
        for (std::size_t v = 0; v < kVectors; ++v) {
          Numbers share;
          Numbers logarithm;
          exp_below_0<kBytes>(apart[v], share);
          small_log1p(share, logarithm);
          parameter[v] += kelvin[v] * logarithm;
        }
        continue;
      }
      for (std::size_t lane = 0; lane < kTemperingLanes; ++lane) {
        Numbers& numbers = parameter[lane / kWidth];
        lanes[lane].parameter_ = numbers[lane % kWidth];
        lanes[lane].add(mean[lane / kWidth][lane % kWidth], seconds);
        numbers[lane % kWidth] = lanes[lane].parameter_;
      }
    }
    for (std::size_t lane = 0; lane < kTemperingLanes; ++lane)
      lanes[lane].parameter_ = parameter[lane / kWidth][lane % kWidth];
    return lanes;
  }
};

namespace {

std::array<GatheredTempering, kTemperingLanes> gather_plain(
    std::span<const double> times_s, const std::array<const double*, kTemperingLanes>& celsius,
    double constant) {
  return GatheredLanes::over<16>(times_s, celsius, constant);
}
#if defined(SOAKWRIGHT_TWO_BUILDS)
[[gnu::target("avx2")]] std::array<GatheredTempering, kTemperingLanes> gather_wide(
    std::span<const double> times_s, const std::array<const double*, kTemperingLanes>& celsius,
    double constant) {
  return GatheredLanes::over<32>(times_s, celsius, constant);
}
#endif

}  // namespace
#endif

std::array<GatheredTempering, kTemperingLanes> gather_lanes(
    std::span<const double> times_s, const std::array<const double*, kTemperingLanes>& celsius,
    double constant) {
#if defined(SOAKWRIGHT_TWO_BUILDS)
  __builtin_cpu_init();
  if (__builtin_cpu_supports("avx2") != 0) return gather_wide(times_s, celsius, constant);
#endif
#if defined(SOAKWRIGHT_VECTORS)
  return gather_plain(times_s, celsius, constant);
#else
  std::array<GatheredTempering, kTemperingLanes> lanes;
  lanes.fill(GatheredTempering(constant));
  for (std::size_t lane = 0; lane < kTemperingLanes; ++lane)
    for (std::size_t i = 0; i + 1 < times_s.size(); ++i)
      lanes[lane].add((celsius[lane][i] + celsius[lane][i + 1]) / 2.0, times_s[i + 1] - times_s[i]);
  return lanes;
#endif
}

}  // namespace soakwright
