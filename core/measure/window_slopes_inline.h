// The sliding sums behind visit_windows(); included by window_slopes.h only.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace soakwright::window_slopes {

__extension__ typedef __int128 Wide;

/// Sums over a window, about a moving origin that keeps them small. `Sum` is wide enough for n · Σtv.
template <typename Sum>
struct Sums {
  std::int64_t origin = 0;
  Sum n = 0, t = 0, tt = 0, v = 0, tv = 0;

  void add(std::int64_t tick, std::int64_t unit) { step(tick, unit, 1); }
  void remove(std::int64_t tick, std::int64_t unit) { step(tick, unit, -1); }
  /// Moves the origin forward: exact, all integers.
  void move_origin(std::int64_t to) {
    const Sum d = static_cast<Sum>(to) - static_cast<Sum>(origin);
    tt += n * d * d - 2 * d * t;
    tv -= d * v;
    t -= n * d;
    origin = to;
  }
  [[nodiscard]] Sum numerator() const { return n * tv - t * v; }
  [[nodiscard]] Sum denominator() const { return n * tt - t * t; }

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

template <typename Sum>
WindowSlope slope_of(const Sums<Sum>& sums, const IntegerSamples& samples) {
  WindowSlope window;
  const double per_hour = 3600.0 / samples.tick_s;
  const auto denominator = static_cast<double>(sums.denominator());
  window.slope_c_per_h = static_cast<double>(sums.numerator()) / denominator * samples.unit_k * per_hour;
  window.root_sxx_h = std::sqrt(denominator / static_cast<double>(sums.n)) / per_hour;
  window.samples = static_cast<std::size_t>(sums.n);
  return window;
}

template <typename Sum, typename Visit>
void slide(const Leg& leg, const IntegerSamples& samples, std::size_t first, std::size_t end, Span part,
           double width_s, Visit&& visit) {
  const double half = width_s / 2.0;
  const std::int64_t far = static_cast<std::int64_t>(4.0 * width_s / samples.tick_s) + 1;
  Sums<Sum> sums;
  sums.origin = samples.tick(first);
  std::size_t in = first;
  std::size_t out = first;
  for (std::size_t i = first; i < end; ++i) {
    const double at = leg.t[i];
    if (at - half < part.first - kWindowSlack_s) continue;
    if (at + half > part.second + kWindowSlack_s) break;
    if (samples.tick(i) - sums.origin > far) sums.move_origin(samples.tick(i));
    for (; in < end && leg.t[in] <= at + half + kWindowSlack_s; ++in)
      sums.add(samples.tick(in), samples.unit(in));
    for (; out < in && leg.t[out] < at - half - kWindowSlack_s; ++out)
      sums.remove(samples.tick(out), samples.unit(out));
    if (sums.n < static_cast<Sum>(kFewestForSlope)) continue;
    WindowSlope window = slope_of(sums, samples);
    window.at_s = at;
    window.from_s = at - half;
    window.to_s = at + half;
    visit(window);
  }
}

/// Whether 64 bits hold every sum of a window of `width_s`: no count, time or reading is larger than these.
inline bool narrow_enough(const IntegerSamples& samples, std::size_t first, std::size_t end, double width_s) {
  const double ticks = static_cast<double>(samples.tick(end - 1) - samples.tick(first)) + 1.0;
  const double count = std::min(static_cast<double>(end - first), width_s / samples.tick_s + 3.0);
  const double largest = std::max(ticks, static_cast<double>(samples.largest_unit) + 1.0);
  return 2.0 * count * count * ticks * largest < 9e18;
}

}  // namespace soakwright::window_slopes

namespace soakwright {

template <typename Visit>
void visit_windows(const Leg& leg, const IntegerSamples& samples, std::size_t first, std::size_t end,
                   Span part, double width_s, Visit&& visit) {
  if (end - first < kFewestForSlope || part.second - part.first < width_s - 2 * kWindowSlack_s) return;
  if (window_slopes::narrow_enough(samples, first, end, width_s))
    window_slopes::slide<std::int64_t>(leg, samples, first, end, part, width_s, visit);
  else
    window_slopes::slide<window_slopes::Wide>(leg, samples, first, end, part, width_s, visit);
}

}  // namespace soakwright
