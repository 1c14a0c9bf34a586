// SPDX-License-Identifier: GPL-3.0-or-later
// The sliding sums behind visit_windows(); included by window_slopes.h only.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>

namespace soakwright::window_slopes {

__extension__ using Wide = __int128;

/// Sums over a window, about a moving origin that keeps them small.
template <typename Sum>
struct Sums {
  std::int64_t origin = 0;
  Sum n = 0, t = 0, tt = 0, v = 0, tv = 0;

  void add(std::int64_t tick, std::int64_t unit) { step(tick, unit, 1); }
  void remove(std::int64_t tick, std::int64_t unit) { step(tick, unit, -1); }
  /// The window moves on by a step: the sample that leaves lies `leaving` from the origin, that which enters
  /// `entering` from the next origin.
  void step_on(std::int64_t step, std::int64_t leaving, std::int64_t unit_leaving, std::int64_t entering,
               std::int64_t unit_entering) {
    const Sum s = step;
    const Sum from = leaving;
    const Sum to = entering;
    const Sum stay = n - 1;
    t -= from;
    tt += to * to - from * from + s * (stay * s - 2 * t);
    t += to - stay * s;
    v -= unit_leaving;
    tv += to * unit_entering - from * unit_leaving - s * v;
    v += unit_entering;
    origin += step;
  }
  /// Moves the origin forward: exact, all integers.
  void move_origin(std::int64_t to) {
    const Sum d = static_cast<Sum>(to) - static_cast<Sum>(origin);
    tt += n * d * d - 2 * d * t;
    tv -= d * v;
    t -= n * d;
    origin = to;
  }
  template <typename Product = Sum>
  [[nodiscard]] double numerator() const {
    return static_cast<double>(static_cast<Product>(n) * tv - static_cast<Product>(t) * v);
  }
  template <typename Product = Sum>
  [[nodiscard]] WindowShape shape() const {
    return {static_cast<double>(n),
            static_cast<double>(static_cast<Product>(n) * tt - static_cast<Product>(t) * t)};
  }

 private:
  void step(std::int64_t tick, std::int64_t unit, int sign) {
    const Sum x = static_cast<Sum>(tick) - static_cast<Sum>(origin);
    const Sum y = static_cast<Sum>(unit);
    const Sum s = sign;
    n += s;
    t += s * x;
    tt += s * x * x;
    v += s * y;
    tv += s * x * y;
  }
};

/// How far, in ticks, the origin of a window's sums may lie behind its middle.
inline std::int64_t farthest_tick(const IntegerSamples& samples, double width_s) {
  return static_cast<std::int64_t>(width_s / samples.tick_s) + 1;
}

/// C/h for one unit per tick.
inline double units_per_tick_to_c_per_h(const IntegerSamples& samples) {
  return samples.unit_k * (3600.0 / samples.tick_s);
}

/// Which windows may be left out where steps are uneven and so every window has a shape of its own: the
/// threshold of a shape that is a little worse than theirs serves for many.
template <typename Interest>
class UnevenThreshold {
 public:
  UnevenThreshold(Interest& of_interest_above, double scale)
      : of_interest_above_(of_interest_above), scale_(scale) {}

  /// Asks anew for the next window.
  void forget() { known_ = false; }
  /// False where the slope is surely not above what is of interest. Sums in doubles: far more exact than
  /// `kRounding`, whatever cancels.
  [[nodiscard]] bool may_be_of_interest(double n, double t, double tt, double v, double tv) {
    const double forward = n * tv;
    const double backward = t * v;
    const double denominator = n * tt - t * t;
    if (!known_ || denominator < least_ * n) ask(n, denominator);
    const double bound = above_ * denominator;
    const double slack = kRounding * (std::fabs(forward) + std::fabs(backward) + std::fabs(bound));
    const double rise = scale_ < 0.0 ? backward - forward : forward - backward;
    return rise > bound - slack;
  }
  /// The same of sums whose products 64 bits hold: exact until the comparison.
  [[nodiscard]] bool may_be_of_interest(std::int64_t n, std::int64_t t, std::int64_t tt, std::int64_t v,
                                        std::int64_t tv) {
    const auto denominator = static_cast<double>(n * tt - t * t);
    if (!known_ || n != samples_ || denominator < least_of_n_) {
      const auto samples = static_cast<double>(n);
      if (!known_ || denominator < least_ * samples) ask(samples, denominator);
      samples_ = n;
      least_of_n_ = least_ * samples;
    }
    const auto rise = static_cast<double>(scale_ < 0.0 ? t * v - n * tv : n * tv - t * v);
    const double bound = above_ * denominator;
    return rise > bound - kRounding * std::fabs(bound);
  }

 private:
  static constexpr double kRounding = 1e-11;
  static constexpr double kWorse = 0.9;

  void ask(double n, double denominator) {
    known_ = true;
    least_ = kWorse * denominator / n;
    above_ = of_interest_above_(WindowShape{n, kWorse * denominator}) / std::fabs(scale_);
  }

  Interest& of_interest_above_;
  double scale_;
  bool known_ = false;
  double least_ = 0.0;        ///< denominator for one sample, of the shape that was asked for
  double above_ = 0.0;        ///< in units per tick
  std::int64_t samples_ = 0;  ///< of the window that was looked at last
  double least_of_n_ = 0.0;   ///< least_ for so many
};

/// How many even steps lie ahead of samples that are asked for in order.
class EvenStepsAhead {
 public:
  explicit EvenStepsAhead(const std::vector<std::size_t>& longer)
      : next_(longer.data()), end_(longer.data() + longer.size()) {}
  [[nodiscard]] std::size_t of(std::size_t sample) {
    while (next_ != end_ && *next_ < sample) ++next_;
    return next_ == end_ ? std::numeric_limits<std::size_t>::max() : *next_ - sample;
  }

 private:
  const std::size_t* next_;
  const std::size_t* end_;
};

/// `Sum` holds every sum of a window, `Product` also n times such a sum.
template <typename Sum, typename Product, typename Interest, typename Visit>
bool slide(const TraceSource& source, const IntegerSamples& samples, std::size_t first, std::size_t end,
           Span part, double width_s, double sign, Interest&& of_interest_above, Visit&& visit) {
  const double half = width_s / 2.0;
  const double scale = sign * units_per_tick_to_c_per_h(samples);
  // Windows wholly within the part are neighbours.
  std::size_t centre = first;
  while (centre < end && source.t[centre] - half < part.first - kWindowSlack_s) ++centre;
  std::size_t behind = end;
  while (behind > centre && source.t[behind - 1] + half > part.second + kWindowSlack_s) --behind;
  bool any = false;
  const std::int64_t far = farthest_tick(samples, width_s);
  const auto reach = static_cast<std::int64_t>(std::floor((half + kWindowSlack_s) / samples.tick_s));
  UnevenThreshold threshold{of_interest_above, scale};
  Sums<Sum> sums;
  sums.origin = samples.tick(first);
  std::size_t in = first;
  std::size_t out = first;
  const auto look_at = [&](std::size_t sample) {
    bool wanted = false;
    if constexpr (sizeof(Product) == sizeof(std::int64_t))
      wanted = threshold.may_be_of_interest(sums.n, sums.t, sums.tt, sums.v, sums.tv);
    else
      wanted = threshold.may_be_of_interest(static_cast<double>(sums.n), static_cast<double>(sums.t),
                                            static_cast<double>(sums.tt), static_cast<double>(sums.v),
                                            static_cast<double>(sums.tv));
    if (!wanted) return;
    const WindowShape shape = sums.template shape<Product>();
    visit(sample, sums.template numerator<Product>() / shape.denominator * scale, shape);
    threshold.forget();
  };
  static const std::vector<std::size_t> kNone;
  const std::vector<std::size_t>& longer = samples.longer_steps ? *samples.longer_steps : kNone;
  EvenStepsAhead ahead_of_middle(longer);
  EvenStepsAhead ahead_of_in(longer);
  EvenStepsAhead ahead_of_out(longer);
  const std::int64_t step = samples.least_step;
  for (std::size_t i = centre; i < behind; ++i) {
    const std::int64_t at = samples.tick(i);
    if (at - sums.origin > far) sums.move_origin(at);
    for (; in < end && samples.tick(in) <= at + reach; ++in) sums.add(samples.tick(in), samples.unit(in));
    for (; out < in && samples.tick(out) < at - reach; ++out)
      sums.remove(samples.tick(out), samples.unit(out));
    if (sums.n < static_cast<Sum>(kFewestForSlope)) continue;
    any = true;
    look_at(i);
    if (!samples.longer_steps) continue;
    // While all steps at the window's ends and middle are even, one sample leaves and one enters at a time.
    const std::int64_t leaving = samples.tick(out) - at;
    const std::int64_t entering = samples.tick(in - 1) - at;
    if (leaving - step >= -reach) continue;
    const std::size_t steps = std::min(
        {ahead_of_middle.of(i), ahead_of_out.of(out), ahead_of_in.of(in - 1), end - in, behind - 1 - i});
    if (steps < kFewestForSlope) continue;
    sums.move_origin(at);
    const std::int64_t* const units_out = &samples.units[out - samples.base];
    const std::int64_t* const units_in = &samples.units[in - samples.base];
    for (std::size_t k = 0; k < steps; ++k) {
      sums.step_on(step, leaving, units_out[k], entering, units_in[k]);
      look_at(i + k + 1);
    }
    i += steps;
    in += steps;
    out += steps;
  }
  return any;
}

/// The windows of a part as sample numbers: centres [first, last], `reach` samples to either side.
struct EvenWindows {
  std::size_t first = 0, last = 0;
  std::size_t reach = 0;
};

/// Nullopt if steps are uneven, or where a window at an edge of the part lacks a sample that the grid has
/// there (a reading at a take-over is the other channel's): such parts are slid over the long way.
inline std::optional<EvenWindows> even_windows(const TraceSource& source, const IntegerSamples& samples,
                                               std::size_t first, std::size_t end, Span part,
                                               double width_s) {
  if (samples.even_step <= 0) return std::nullopt;
  const double half = width_s / 2.0;
  const double step_s = static_cast<double>(samples.even_step) * samples.tick_s;
  EvenWindows windows;
  windows.reach = static_cast<std::size_t>(std::floor((half + kWindowSlack_s) / step_s));
  windows.first = first;
  while (windows.first < end && source.t[windows.first] - half < part.first - kWindowSlack_s) ++windows.first;
  windows.last = end - 1;
  while (windows.last > first && source.t[windows.last] + half > part.second + kWindowSlack_s) --windows.last;
  if (windows.first > windows.last || windows.first < first + windows.reach ||
      windows.last + windows.reach >= end || 2 * windows.reach + 1 < kFewestForSlope)
    return std::nullopt;
  return windows;
}

/// A whole number that is surely not above `bound`.
inline std::int64_t whole_below(double bound) {
  constexpr double kFar = 9e18;
  if (!(bound > -kFar)) return std::numeric_limits<std::int64_t>::min();
  if (bound >= kFar) return std::numeric_limits<std::int64_t>::max();
  constexpr double kRounding = 1e-12;
  return static_cast<std::int64_t>(std::floor(bound - kRounding * std::fabs(bound))) - 1;
}

/// Even steps: every window has the same times, so with k counted from the window's first sample only Σv and
/// Σkv move.
template <typename Interest, typename Visit>
void slide_evenly(const IntegerSamples& samples, const EvenWindows& windows, double sign,
                  Interest&& of_interest_above, Visit&& visit) {
  const std::size_t reach = windows.reach;
  const std::size_t count = 2 * reach + 1;
  const auto n = static_cast<std::int64_t>(count);
  const std::int64_t middle = n - 1;  // twice the mean of k
  const double kk = static_cast<double>(n) * static_cast<double>(n) *
                    (static_cast<double>(n) * static_cast<double>(n) - 1.0) / 12.0;
  const auto step = static_cast<double>(samples.even_step);
  const WindowShape shape{static_cast<double>(n), kk * step * step};
  const double scale = units_per_tick_to_c_per_h(samples) / (2.0 * kk * step) * static_cast<double>(n);
  const std::int64_t way = sign < 0.0 ? -1 : 1;
  const std::int64_t* window = samples.units.data() + (windows.first - reach - samples.base);
  std::int64_t sum = 0;
  std::int64_t moment = 0;  // Σ k v
  for (std::size_t k = 0; k < count; ++k) {
    const std::int64_t v = window[k];
    sum += v;
    moment += static_cast<std::int64_t>(k) * v;
  }
  // Σkv − Σk Σv / n, doubled to stay whole, in the direction asked for; the slope is `scale` times as much.
  std::int64_t rise = way * (2 * moment - middle * sum);
  std::int64_t above = whole_below(of_interest_above(shape) / scale);
  for (std::size_t centre = windows.first;; ++centre, ++window) {
    if (rise > above) {
      visit(centre, static_cast<double>(rise) * scale, shape);
      above = whole_below(of_interest_above(shape) / scale);
    }
    if (centre == windows.last) return;
    const std::int64_t leaving = window[0];
    const std::int64_t entering = window[count];
    rise += way * (middle * (entering + leaving) - 2 * (sum - leaving));
    sum += entering - leaving;
  }
}

/// No window of `width_s` has more samples.
inline double most_samples(const IntegerSamples& samples, std::size_t first, std::size_t end,
                           double width_s) {
  const double step_s = static_cast<double>(samples.least_step) * samples.tick_s;
  return std::min(static_cast<double>(end - first), width_s / step_s + 3.0);
}

/// Whether 64 bits hold every sum of a window of `width_s` and n times each: no count, time or reading is
/// larger than these.
inline bool narrow_enough(const IntegerSamples& samples, std::size_t first, std::size_t end, double width_s) {
  const double ticks = static_cast<double>(samples.tick(end - 1) - samples.tick(first)) + 1.0;
  const double count = most_samples(samples, first, end, width_s);
  const double largest = std::max(ticks, static_cast<double>(samples.largest_unit) + 1.0);
  return 2.0 * count * count * ticks * largest < 9e18;
}

/// Whether 64 bits hold every sum of such a window, though not its products.
inline bool sums_fit(const IntegerSamples& samples, std::size_t first, std::size_t end, double width_s) {
  const double ticks = static_cast<double>(farthest_tick(samples, width_s)) + width_s / samples.tick_s + 3.0;
  const double count = most_samples(samples, first, end, width_s);
  const double largest = std::max(ticks, static_cast<double>(samples.largest_unit) + 1.0);
  return 4.0 * count * ticks * largest < 9e18;
}

}  // namespace soakwright::window_slopes

namespace soakwright {

template <typename Interest, typename Visit>
bool visit_windows(const TraceSource& source, const IntegerSamples& samples, std::size_t first,
                   std::size_t end, Span part, double width_s, double sign, Interest&& of_interest_above,
                   Visit&& visit) {
  if (end < first + kFewestForSlope || part.second - part.first < width_s - 2 * kWindowSlack_s) return false;
  const bool narrow = window_slopes::narrow_enough(samples, first, end, width_s);
  const auto even =
      narrow ? window_slopes::even_windows(source, samples, first, end, part, width_s) : std::nullopt;
  if (even) {
    window_slopes::slide_evenly(samples, *even, sign, of_interest_above, visit);
    return true;
  }
  using window_slopes::Wide;
  const auto slide = [&]<typename Sum, typename Product>() {
    return window_slopes::slide<Sum, Product>(source, samples, first, end, part, width_s, sign,
                                              of_interest_above, visit);
  };
  if (narrow) return slide.template operator()<std::int64_t, std::int64_t>();
  if (window_slopes::sums_fit(samples, first, end, width_s))
    return slide.template operator()<std::int64_t, Wide>();
  return slide.template operator()<Wide, Wide>();
}

}  // namespace soakwright
