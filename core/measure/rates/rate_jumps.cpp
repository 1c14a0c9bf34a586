// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/rate_jumps.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

namespace soakwright {
namespace {

struct HeightAt {
  double t = 0.0;
  double height = 0.0;  ///< °C, downwards positive where the stage cools
};

/// Collects jumps of one part in time order, of overlapping ones the largest.
class JumpList {
 public:
  explicit JumpList(double bound_k) : bound_k_(bound_k) {}

  void add(const HeightAt& from, const HeightAt& to) {
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
std::optional<HeightAt> crossing(RatePart::End end, double t, double nearest_reading_t,
                                 const RampStage& stage, double sign) {
  if (end == RatePart::End::other || std::abs(nearest_reading_t - t) <= kSampleSlack_s) return std::nullopt;
  return HeightAt{t, sign * (end == RatePart::End::above ? stage.above : stage.below)->celsius()};
}

/// Lowest and highest of some readings, counted in the direction of the stage.
struct Extent {
  double low = 0.0, high = 0.0;
};

/// Of samples [first, end), which lie in one block; that of a whole block is known already.
Extent extent_of(const TraceSource& source, std::size_t first, std::size_t end, double sign) {
  double low = source.c[first];
  double high = low;
  const std::size_t block = first / TraceSource::kBlock;
  if (end - first == TraceSource::kBlock && block < source.block_low.size()) {
    low = source.block_low[block];
    high = source.block_high[block];
  } else {
    for (std::size_t i = first + 1; i < end; ++i) {
      low = std::min(low, source.c[i]);
      high = std::max(high, source.c[i]);
    }
  }
  return sign < 0.0 ? Extent{-high, -low} : Extent{low, high};
}

/// Whether a reading of the part may be above one of the time before it, or above its start, by more than the
/// bound: of `group` samples only lowest and highest are looked at, so that one alone tells for certain. The
/// lowest of the time before is that of a queue of two stacks: `falling` has, from each group on, the lowest
/// before `middle`, and `low` the lowest from there on.
bool may_jump(const TraceSource& source, const RatePart& part, const std::optional<HeightAt>& start,
              double sign, double width_s, double bound_k, std::size_t group) {
  constexpr double kNone = std::numeric_limits<double>::infinity();
  const std::size_t base = part.first / group;
  const std::size_t count = (part.end - 1) / group + 1 - base;
  const auto end_of = [&](std::size_t place) { return std::min((base + place + 1) * group, part.end); };
  std::vector<double> lows(count);
  std::vector<double> falling(count);
  std::size_t from = 0;
  std::size_t middle = 0;
  double low = kNone;
  for (std::size_t place = 0; place < count; ++place) {
    const std::size_t first = std::max((base + place) * group, part.first);
    const Extent extent = extent_of(source, first, end_of(place), sign);
    lows[place] = extent.low;
    low = std::min(low, extent.low);
    const double from_t = source.t[first] - width_s - kWindowSlack_s;
    while (source.t[end_of(from) - 1] < from_t) ++from;
    if (from >= middle) {
      double lowest = kNone;
      for (std::size_t k = place + 1; k > from; --k) falling[k - 1] = lowest = std::min(lowest, lows[k - 1]);
      middle = place + 1;
      low = kNone;
    }
    double before = std::min(low, falling[from]);
    if (start && start->t >= from_t) before = std::min(before, start->height);
    if (extent.high - before > bound_k) return true;
  }
  return false;
}

/// Most parts have no jump, and large groups tell so in a fraction of the time.
bool any_jump(const TraceSource& source, const RatePart& part, const std::optional<HeightAt>& start,
              double sign, double width_s, double bound_k) {
  for (const std::size_t group : {TraceSource::kBlock, TraceSource::kBlock / 8, std::size_t{1}})
    if (!may_jump(source, part, start, sign, width_s, bound_k, group)) return false;
  return true;
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
  const bool any = any_jump(source, part, start, sign, width_s, bound);
  std::vector<HeightAt> lowest(any ? part.end - part.first + 1 : 1);
  std::size_t front = 0;
  std::size_t back = 0;
  if (start) lowest[back++] = *start;
  for (std::size_t i = part.first; any && i < part.end; ++i) {
    const HeightAt here{source.t[i], sign * source.c[i]};
    const double from_t = here.t - width_s - kWindowSlack_s;
    while (front < back && lowest[front].t < from_t) ++front;
    if (front < back) jumps.add(lowest[front], here);
    while (front < back && lowest[back - 1].height >= here.height) --back;
    lowest[back++] = here;
  }
  if (finish) {
    std::optional<HeightAt> low;
    for (std::size_t i = part.end; i > part.first && source.t[i - 1] >= finish->t - width_s - kWindowSlack_s;
         --i)
      if (!low || sign * source.c[i - 1] < low->height) low = {source.t[i - 1], sign * source.c[i - 1]};
    if (low) jumps.add(*low, *finish);
  }
  return jumps.take();
}

}  // namespace soakwright
