// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace soakwright {

namespace {

constexpr double kSigmaPerMedianSize = 1.4826;  // of a normal distribution: 1 / 0.67449
constexpr std::size_t kMostLinePoints = 64;     // 2,016 pairs: enough for a line, and quick

// So many values and more: those about the middle are picked out first.
constexpr std::size_t kManyValues = 512;
constexpr std::size_t kLooks = 64;
constexpr std::size_t kAside = 9;  // looks on either side of their middle: about two standard deviations

/// Leaves of many values those about the middle, in a copy that no comparison steers, as a processor likes
/// it. Returns how many smaller ones are gone; nullopt if the middle two would be among those gone.
std::optional<std::size_t> keep_about_middle(std::vector<double>& values) {
  std::array<double, kLooks> looks{};
  for (std::size_t i = 0; i < kLooks; ++i) looks[i] = values[(2 * i + 1) * values.size() / (2 * kLooks)];
  std::sort(looks.begin(), looks.end());
  const double low = looks[kLooks / 2 - kAside];
  const double high = looks[kLooks / 2 + kAside];
  std::vector<double> kept(values.size() + 1);
  std::size_t below = 0;
  std::size_t count = 0;
  for (const double value : values) {
    below += value < low ? 1U : 0U;
    kept[count] = value;
    count += ((value >= low) & (value <= high)) ? 1U : 0U;
  }
  const std::size_t middle = values.size() / 2;
  if (middle < below + 1 || middle >= below + count) return std::nullopt;
  kept.resize(count);
  values = std::move(kept);
  return below;
}

}  // namespace

double median_of(std::vector<double> values) {
  if (values.empty()) return 0.0;
  const std::size_t all = values.size();
  const std::size_t below = all >= kManyValues ? keep_about_middle(values).value_or(0) : 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(all / 2 - below);
  std::nth_element(values.begin(), middle, values.end());
  if (all % 2 == 1) return *middle;
  return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

double noise_of(std::span<const double> values) {
  if (values.size() < 3) return 0.0;
  std::vector<double> sizes;
  sizes.reserve(values.size());
  for (std::size_t i = 1; i + 1 < values.size(); ++i)
    sizes.push_back(std::abs(values[i - 1] - 2.0 * values[i] + values[i + 1]));
  return kSigmaPerMedianSize * median_of(std::move(sizes)) / std::sqrt(6.0);  // 1 + 4 + 1 variances
}

Line robust_line(std::span<const double> times_s, std::span<const double> values) {
  Line line;
  if (times_s.empty()) return line;
  // Long runs are thinned by averaging neighbours, so that no reading is wasted.
  std::vector<double> t;
  std::vector<double> y;
  const std::size_t n = times_s.size();
  const std::size_t groups = std::min(n, kMostLinePoints);
  for (std::size_t g = 0; g < groups; ++g) {
    const std::size_t first = g * n / groups;
    const std::size_t last = (g + 1) * n / groups;
    double sum_t = 0.0;
    double sum_y = 0.0;
    for (std::size_t i = first; i < last; ++i) {
      sum_t += times_s[i];
      sum_y += values[i];
    }
    t.push_back(sum_t / static_cast<double>(last - first));
    y.push_back(sum_y / static_cast<double>(last - first));
  }
  std::vector<double> slopes;
  slopes.reserve(groups * (groups - 1) / 2);
  for (std::size_t i = 0; i < groups; ++i)
    for (std::size_t j = i + 1; j < groups; ++j)
      if (t[j] > t[i]) slopes.push_back((y[j] - y[i]) / (t[j] - t[i]));
  line.slope = median_of(std::move(slopes));
  line.origin_s = t[groups / 2];
  std::vector<double> offsets;
  for (std::size_t i = 0; i < groups; ++i) offsets.push_back(y[i] - line.slope * (t[i] - line.origin_s));
  line.at_origin = median_of(std::move(offsets));
  return line;
}

}  // namespace soakwright
