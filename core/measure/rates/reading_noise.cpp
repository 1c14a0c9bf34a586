// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/reading_noise.h"

#include <algorithm>
#include <cstdlib>

namespace soakwright {
namespace {

/// The median of χ² with one degree of freedom.
constexpr double kMedianOfChiSquare = 0.4549;

std::int64_t bend_of(const std::int64_t* units) { return std::abs(2 * units[1] - units[0] - units[2]); }

/// e of |2b − a − c| = bend at even steps: (bend / 2)² / 1.5 in units.
double square_of(std::int64_t bend, double unit_k) {
  const double kelvin = static_cast<double>(bend) * unit_k;
  return kelvin * kelvin / 6.0;
}

/// e of samples i − 1, i, i + 1.
double square_at(const IntegerSamples& samples, std::size_t i) {
  const auto before = static_cast<double>(samples.tick(i) - samples.tick(i - 1));
  const auto both = static_cast<double>(samples.tick(i + 1) - samples.tick(i - 1));
  const auto after = both - before;
  const auto rise = static_cast<double>(samples.unit(i + 1) - samples.unit(i - 1));
  const auto own = static_cast<double>(samples.unit(i) - samples.unit(i - 1));
  const double d = (own * both - before * rise) * samples.unit_k;
  return d * d / (both * both + before * before + after * after);
}

/// The median of e's over 0.4549, or the mean of a few; the order of `squares` is lost.
double level_of(std::vector<double>& squares) {
  const std::size_t n = squares.size();
  if (n == 0) return 0.0;
  if (n < kFewestForMedian) {
    double sum = 0.0;
    for (const double square : squares) sum += square;
    return sum / static_cast<double>(n);
  }
  const auto middle = squares.begin() + static_cast<std::ptrdiff_t>(n / 2);
  std::nth_element(squares.begin(), middle, squares.end());
  double median = *middle;
  if (n % 2 == 0) median = (median + *std::max_element(squares.begin(), middle)) / 2.0;
  return median / kMedianOfChiSquare;
}

}  // namespace

void ReadingNoise::add(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  if (end < first + 3) return;
  if (samples.even_step > 0 && (bends_ == 0 || unit_k_ == samples.unit_k))
    return add_even(samples, first, end);
  // Where rows are missing here and there, most triples have equal steps all the same.
  const bool counts = bends_ == 0 || unit_k_ == samples.unit_k;
  for (std::size_t i = first + 1; i + 1 < end; ++i) {
    if (counts && samples.tick(i) - samples.tick(i - 1) == samples.tick(i + 1) - samples.tick(i))
      count_bend(bend_of(samples.units.data() + (i - 1 - samples.base)), samples.unit_k);
    else
      others_.push_back(square_at(samples, i));
  }
}

void ReadingNoise::count_bend(std::int64_t bend, double unit_k) {
  if (counts_.empty()) counts_.resize(kCounted);
  unit_k_ = unit_k;
  ++bends_;
  if (bend < static_cast<std::int64_t>(kCounted))
    ++counts_[static_cast<std::size_t>(bend)];
  else
    large_bends_.push_back(bend);
}

void ReadingNoise::add_even(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  if (counts_.empty()) counts_.resize(kCounted);
  unit_k_ = samples.unit_k;
  const std::int64_t* units = samples.units.data() + (first - samples.base);
  const std::size_t triples = end - first - 2;
  for (std::size_t i = 0; i < triples; ++i) {
    const std::int64_t bend = bend_of(units + i);
    if (bend < static_cast<std::int64_t>(kCounted))
      ++counts_[static_cast<std::size_t>(bend)];
    else
      large_bends_.push_back(bend);
  }
  bends_ += triples;
}

/// The e at `place` when bends and others, which are in order, are put in one order.
double ReadingNoise::square_at_place(std::size_t place) const {
  std::size_t other = 0;
  for (std::size_t bend = 0; bend < counts_.size(); ++bend) {
    if (counts_[bend] == 0) continue;
    const double square = square_of(static_cast<std::int64_t>(bend), unit_k_);
    const auto below = static_cast<std::size_t>(
        std::lower_bound(others_.begin() + static_cast<std::ptrdiff_t>(other), others_.end(), square) -
        others_.begin());
    if (place < below - other) return others_[other + place];
    place -= below - other;
    other = below;
    if (place < counts_[bend]) return square;
    place -= counts_[bend];
  }
  std::vector<double> rest(others_.begin() + static_cast<std::ptrdiff_t>(other), others_.end());
  for (const std::int64_t bend : large_bends_) rest.push_back(square_of(bend, unit_k_));
  const auto at = rest.begin() + static_cast<std::ptrdiff_t>(place);
  std::nth_element(rest.begin(), at, rest.end());
  return *at;
}

/// Counted bends become e's among the others.
void ReadingNoise::spread_out_bends() {
  for (std::size_t bend = 0; bend < counts_.size(); ++bend)
    others_.insert(others_.end(), counts_[bend], square_of(static_cast<std::int64_t>(bend), unit_k_));
  for (const std::int64_t bend : large_bends_) others_.push_back(square_of(bend, unit_k_));
  counts_.clear();
  large_bends_.clear();
  bends_ = 0;
}

double ReadingNoise::level() {
  // Few others are put in order and looked up beside the bends.
  if (bends_ < std::max(kFewestForMedian, 8 * others_.size())) {
    spread_out_bends();
    return level_of(others_);
  }
  std::sort(others_.begin(), others_.end());
  const std::size_t all = bends_ + others_.size();
  double median = square_at_place(all / 2);
  if (all % 2 == 0) median = (median + square_at_place(all / 2 - 1)) / 2.0;
  return median / kMedianOfChiSquare;
}

std::optional<double> noise_within(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  if (end < first + 2 + kFewestForMedian) return std::nullopt;
  ReadingNoise noise;
  noise.add(samples, first, end);
  return noise.level();
}

double noise_bound(const IntegerSamples& samples, std::size_t first, std::size_t end) {
  if (end < first + 3) return 0.0;
  double largest = 0.0;
  if (samples.even_step > 0) {
    const std::int64_t* units = samples.units.data() + (first - samples.base);
    std::int64_t bend = 0;
    for (std::size_t i = 0; i + 2 < end - first; ++i) bend = std::max(bend, bend_of(units + i));
    largest = square_of(bend, samples.unit_k);
  } else {
    for (std::size_t i = first + 1; i + 1 < end; ++i) largest = std::max(largest, square_at(samples, i));
  }
  // No median is above the largest.
  return largest / kMedianOfChiSquare;
}

}  // namespace soakwright
