// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/rate_jumps.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

namespace soakwright {
namespace {

struct Point {
  double t = 0.0;
  double height = 0.0;  ///< °C, downwards positive where the stage cools
};

/// Collects jumps of one part in time order, of overlapping ones the largest.
class JumpList {
 public:
  explicit JumpList(double bound_k) : bound_k_(bound_k) {}

  void add(const Point& from, const Point& to) {
    const double rise = to.height - from.height;
    if (!(rise > bound_k_)) return;
    if (!jumps_.empty() && from.t <= jumps_.back().time.second) {
      if (rise > jumps_.back().kelvin) jumps_.back() = {0, {from.t, to.t}, rise, false};
      return;
    }
    jumps_.push_back({0, {from.t, to.t}, rise, false});
  }
  [[nodiscard]] std::vector<RateJump> take() { return std::move(jumps_); }

 private:
  double bound_k_;
  std::vector<RateJump> jumps_;
};

/// The part's start or end as a point, where the channel crosses a limit there and no reading lies on it.
std::optional<Point> crossing(RatePart::End end, double t, double nearest_reading_t, const RampStage& stage,
                              double sign) {
  if (end == RatePart::End::other || std::abs(nearest_reading_t - t) <= kSampleSlack_s) return std::nullopt;
  return Point{t, sign * (end == RatePart::End::above ? stage.above : stage.below)->celsius()};
}

/// Lowest and highest of some readings, counted in the direction of the stage.
struct Extent {
  double low = 0.0, high = 0.0;
};

Extent extent_of(const double* celsius, std::size_t count, double sign) {
  // Two at a time: one comparison need not wait for the one before.
  Extent even{celsius[0], celsius[0]};
  Extent odd = even;
  for (std::size_t i = 0; i + 1 < count; i += 2) {
    even = {std::min(even.low, celsius[i]), std::max(even.high, celsius[i])};
    odd = {std::min(odd.low, celsius[i + 1]), std::max(odd.high, celsius[i + 1])};
  }
  const double last = celsius[count - 1];
  const double low = std::min({even.low, odd.low, last});
  const double high = std::max({even.high, odd.high, last});
  return sign < 0.0 ? Extent{-high, -low} : Extent{low, high};
}

/// Whether any_jump() may find one, by whole blocks of readings: most parts have none, and this tells so in a
/// fraction of the time.
bool may_jump(const TraceSource& source, const RatePart& part, const std::optional<Point>& start, double sign,
              double width_s, double bound_k) {
  constexpr std::size_t kBlock = 64;
  std::vector<double> lows;
  lows.reserve((part.end - part.first) / kBlock + 1);
  std::size_t from = 0;  // the first block that reaches into the time before
  for (std::size_t first = part.first; first < part.end; first += kBlock) {
    const std::size_t count = std::min(kBlock, part.end - first);
    const Extent extent = extent_of(source.c.data() + first, count, sign);
    lows.push_back(extent.low);
    const double from_t = source.t[first] - width_s - kWindowSlack_s;
    while (source.t[std::min(part.first + (from + 1) * kBlock, part.end) - 1] < from_t) ++from;
    double low = *std::min_element(lows.begin() + static_cast<std::ptrdiff_t>(from), lows.end());
    if (start && start->t >= from_t) low = std::min(low, start->height);
    if (extent.high - low > bound_k) return true;
  }
  return false;
}

/// Whether a reading of the part is above one of the time before it, or its start, by more than the bound.
/// The lowest of the time before is that of a queue of two stacks: `falling` has, from each reading on, the
/// lowest up to `middle`, and `low` the lowest from there on.
bool any_jump(const TraceSource& source, const RatePart& part, const std::optional<Point>& start, double sign,
              double width_s, double bound_k) {
  constexpr double kNone = std::numeric_limits<double>::infinity();
  std::vector<double> falling(part.end - part.first);
  std::size_t from = part.first;
  std::size_t middle = part.first;
  double low = kNone;
  for (std::size_t i = part.first; i < part.end; ++i) {
    const double from_t = source.t[i] - width_s - kWindowSlack_s;
    while (source.t[from] < from_t) ++from;
    if (from >= middle) {
      double lowest = kNone;
      for (std::size_t k = i; k > from; --k)
        falling[k - 1 - part.first] = lowest = std::min(lowest, sign * source.c[k - 1]);
      middle = i;
      low = kNone;
    }
    double before = from < middle ? std::min(low, falling[from - part.first]) : low;
    if (start && start->t >= from_t) before = std::min(before, start->height);
    const double height = sign * source.c[i];
    if (height - before > bound_k) return true;
    low = std::min(low, height);
  }
  return false;
}

}  // namespace

std::vector<RateJump> rate_jumps(const Trace& trace, const RatePart& part, const RampStage& stage,
                                 double width_s, double bound_k) {
  if (part.end <= part.first) return {};
  const double sign = stage.direction == RampStage::Direction::heat ? 1.0 : -1.0;
  const TraceSource& source = trace.sources[trace.pieces[part.piece].source];
  const auto start = crossing(part.starts_at, part.time.first, source.t[part.first], stage, sign);
  const auto finish = crossing(part.ends_at, part.time.second, source.t[part.end - 1], stage, sign);
  JumpList jumps(bound_k + kTemperatureSlack);
  // The lowest points of the time before, [front, back), those that a later one undercuts left out.
  const double bound = bound_k + kTemperatureSlack;
  const bool any = may_jump(source, part, start, sign, width_s, bound) &&
                   any_jump(source, part, start, sign, width_s, bound);
  std::vector<Point> lowest(any ? part.end - part.first + 1 : 1);
  std::size_t front = 0;
  std::size_t back = 0;
  if (start) lowest[back++] = *start;
  for (std::size_t i = part.first; any && i < part.end; ++i) {
    const Point here{source.t[i], sign * source.c[i]};
    const double from_t = here.t - width_s - kWindowSlack_s;
    while (front < back && lowest[front].t < from_t) ++front;
    if (front < back) jumps.add(lowest[front], here);
    while (front < back && lowest[back - 1].height >= here.height) --back;
    lowest[back++] = here;
  }
  if (finish) {
    std::optional<Point> low;
    for (std::size_t i = part.end; i > part.first && source.t[i - 1] >= finish->t - width_s - kWindowSlack_s;
         --i)
      if (!low || sign * source.c[i - 1] < low->height) low = {source.t[i - 1], sign * source.c[i - 1]};
    if (low) jumps.add(*low, *finish);
  }
  return jumps.take();
}

}  // namespace soakwright
