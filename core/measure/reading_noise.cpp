#include "core/measure/reading_noise.h"

#include <algorithm>
#include <cmath>

namespace soakwright {
namespace {

template <typename Sum>
double sum_of_squared_bends(const std::int64_t* units, std::size_t triples) {
  Sum squares = 0;
  for (std::size_t i = 0; i < triples; ++i) {
    const std::int64_t bend = 2 * units[i + 1] - units[i] - units[i + 2];
    squares += static_cast<Sum>(bend) * bend;
  }
  return static_cast<double>(squares);
}

}  // namespace

void ReadingNoise::add(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  if (end < first + 3) return;
  if (samples.even_step > 0) return add_even(samples, first, end);
  for (std::size_t i = first + 1; i + 1 < end; ++i) {
    const auto before = static_cast<double>(samples.tick(i) - samples.tick(i - 1));
    const auto both = static_cast<double>(samples.tick(i + 1) - samples.tick(i - 1));
    const double w = before / both;
    const auto rise = static_cast<double>(samples.unit(i + 1) - samples.unit(i - 1));
    const double d = (static_cast<double>(samples.unit(i) - samples.unit(i - 1)) - w * rise) * samples.unit_k;
    sum_ += d * d / (1.0 + w * w + (1.0 - w) * (1.0 - w));
    ++count_;
  }
}

/// With even steps w is one half, and d² / 1.5 is (2b − a − c)² / 6.
void ReadingNoise::add_even(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  const std::int64_t* units = samples.units.data() + (first - samples.base);
  const std::size_t triples = end - first - 2;
  // A bend is at most four readings; most logs' squares fit 64 bits with room to spare.
  const double largest = 4.0 * static_cast<double>(samples.largest_unit);
  const double squares = largest * largest * static_cast<double>(triples) < 9e18
                             ? sum_of_squared_bends<std::int64_t>(units, triples)
                             : sum_of_squared_bends<window_slopes::Wide>(units, triples);
  sum_ += squares * samples.unit_k * samples.unit_k / 6.0;
  count_ += triples;
}

double ReadingNoise::standard_deviation(double last_digit_k) const {
  const double measured = count_ > 0 ? sum_ / static_cast<double>(count_) : 0.0;
  return std::sqrt(std::max(measured, last_digit_k * last_digit_k / 12.0));
}

}  // namespace soakwright
