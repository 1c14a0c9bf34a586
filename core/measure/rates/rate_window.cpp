// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/rate_window.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/rates/reading_noise.h"

namespace soakwright {
namespace {

/// Slopes found from a bound are looked up a little below it.
double rounded_down(double slope) {
  constexpr double kRounding = 1e-9;
  return std::isfinite(slope) ? slope - kRounding * (1.0 + std::fabs(slope)) : slope;
}

}  // namespace

PartWindows::PartWindows(const Trace& trace, std::size_t index, const RatePart& part,
                         const IntegerSamples& samples, double sign, double edge_c_per_h,
                         double channel_level_k2, double last_digit_k, bool guarded, double rate_share)
    : source_(trace.sources[trace.pieces[part.piece].source]),
      index_(index),
      part_(part),
      samples_(samples),
      sign_(sign),
      edge_(edge_c_per_h),
      channel_noise_k_(std::sqrt(std::max(channel_level_k2, last_digit_k * last_digit_k / 12.0))),
      noise_bound_k_(channel_noise_k_),
      guarded_(guarded),
      rate_share_(rate_share) {
  if (guarded_)
    noise_bound_k_ = std::max(noise_bound_k_, std::sqrt(noise_bound(samples_, part_.first, part_.end)));
}

std::optional<FoundWindow> PartWindows::whole(double in_range_min_s) const {
  if (part_.time.second - part_.time.first < in_range_min_s - kWindowSlack_s) return std::nullopt;
  const auto fit = slope_over(samples_, part_.first, part_.end, part_.time);
  if (!fit) return std::nullopt;
  FoundWindow window;
  window.slope_c_per_h = sign_ * fit->slope_c_per_h;
  window.shape = shape_over(samples_, part_.first, part_.end);
  if (part_.beside_hold && window.slope_c_per_h <= 0.0) return std::nullopt;
  return window;
}

double PartWindows::with_uncertainty(double slope) const { return slope + rate_share_ * std::fabs(slope); }

double PartWindows::slope_with(double with_uncertainty) const {
  if (!guarded_ || std::isinf(with_uncertainty)) return with_uncertainty;
  return rounded_down(with_uncertainty / (with_uncertainty >= 0.0 ? 1.0 + rate_share_ : 1.0 - rate_share_));
}

double PartWindows::standard_error(double noise_k, const WindowShape& shape) const {
  return noise_k / (std::sqrt(shape.denominator / shape.samples) * samples_.tick_s / 3600.0);
}

double PartWindows::channel_error(const WindowShape& shape) {
  if (shape.denominator != shape_.denominator || shape.samples != shape_.samples) {
    shape_ = shape;
    channel_error_ = standard_error(channel_noise_k_, shape);
  }
  return channel_error_;
}

bool PartWindows::is_open(const FoundWindow& window, double width_s) {
  const double slope = with_uncertainty(window.slope_c_per_h);
  if (!guarded_) return slope > edge_;
  if (slope + kSureStandardErrors * channel_error(window.shape) > edge_) return true;
  if (slope + kSureStandardErrors * standard_error(noise_bound_k_, window.shape) <= edge_) return false;
  return slope + kSureStandardErrors * standard_error(noise_of(window, width_s), window.shape) > edge_;
}

double PartWindows::open_above(const WindowShape& shape) {
  if (!guarded_ || std::isinf(edge_)) return edge_;
  return slope_with(edge_ - kSureStandardErrors * (noise_bound_k_ / channel_noise_k_) * channel_error(shape));
}

bool PartWindows::is_candidate(const FoundWindow& window) {
  return window.slope_c_per_h > candidate_above(window.shape);
}

double PartWindows::candidate_of_any_shape_above() const {
  return guarded_ && !std::isinf(edge_) ? rounded_down(edge_ / (1.0 - rate_share_)) : edge_;
}

double PartWindows::candidate_above(const WindowShape& shape) {
  if (std::isinf(edge_)) return edge_;
  const double certain = edge_ + kSureStandardErrors * channel_error(shape);
  return guarded_ ? rounded_down(certain / (1.0 - rate_share_)) : certain;
}

std::pair<std::size_t, std::size_t> PartWindows::samples_of(const FoundWindow& window, double width_s) const {
  if (!window.sample) return {part_.first, part_.end};
  const double at = source_.t[*window.sample];
  const auto first = source_.t.begin() + static_cast<std::ptrdiff_t>(part_.first);
  const auto end = source_.t.begin() + static_cast<std::ptrdiff_t>(part_.end);
  const auto from = std::lower_bound(first, end, at - width_s / 2.0 - kWindowSlack_s);
  const auto to = std::upper_bound(from, end, at + width_s / 2.0 + kWindowSlack_s);
  return {static_cast<std::size_t>(from - source_.t.begin()),
          static_cast<std::size_t>(to - source_.t.begin())};
}

double PartWindows::middle_s(const FoundWindow& window) const {
  return window.sample ? source_.t[*window.sample] : (part_.time.first + part_.time.second) / 2.0;
}

double PartWindows::noise_of(const FoundWindow& window, double width_s) const {
  const auto [first, end] = samples_of(window, width_s);
  const auto level = noise_within(samples_, first, end);
  return level ? std::max(channel_noise_k_, std::sqrt(*level)) : channel_noise_k_;
}

MeasuredRate PartWindows::measured(const FoundWindow& window, double width_s) const {
  MeasuredRate rate;
  rate.trace = index_;
  if (window.sample) {
    rate.window =
        window_about(source_, samples_, *window.sample, width_s, window.slope_c_per_h, window.shape);
  } else {
    rate.window = *slope_over(samples_, part_.first, part_.end, part_.time);
    rate.window.slope_c_per_h = window.slope_c_per_h;
  }
  rate.standard_error = noise_of(window, width_s) / rate.window.root_sxx_h;
  rate.uncertainty = rate_share_ * std::fabs(window.slope_c_per_h);
  rate.beside_hold = part_.beside_hold;
  return rate;
}

bool PartWindows::is_certain(const FoundWindow& window, double width_s, LeftOutTenth& tenth) const {
  const double uncertainty = rate_share_ * std::fabs(window.slope_c_per_h);
  const std::pair<std::size_t, std::size_t> samples = samples_of(window, width_s);
  const auto beyond = [&](double noise_k) {
    const double bound = edge_ + kSureStandardErrors * standard_error(noise_k, window.shape) + uncertainty;
    return window.slope_c_per_h > bound && tenth.beyond(samples.first, samples.second, sign_, bound);
  };
  // The window's own noise costs more to find, and is never less than the channel's.
  return beyond(channel_noise_k_) && beyond(noise_of(window, width_s));
}

}  // namespace soakwright
