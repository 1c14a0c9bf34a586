// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/straight_pieces.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace soakwright {

namespace {

constexpr std::size_t kMostNodes = 480;  // places where a piece may end: 115,000 candidate pieces
/// Of the price: far above what rounding does to a cost, far below what decides.
constexpr double kClearlyWorse = 1e-3;

/// Running sums, so that the line of any piece costs a few operations. Times are taken from the middle of the
/// record in units of its duration and temperatures from their mean, which keeps the sums well conditioned.
class PieceCost {
 public:
  explicit PieceCost(const GroupCourse& course) : sums_(course.points() + 1) {
    const double origin = 0.5 * (course.times_s.front() + course.times_s.back());
    const double unit = std::max(course.times_s.back() - course.times_s.front(), 1e-9);
    double mean = 0.0;
    for (const double celsius : course.celsius) mean += celsius;
    mean /= static_cast<double>(course.points());
    for (std::size_t i = 0; i < course.points(); ++i) {
      const double t = (course.times_s[i] - origin) / unit;
      const double y = course.celsius[i] - mean;
      sums_[i + 1] = {sums_[i].t + t, sums_[i].y + y, sums_[i].tt + t * t, sums_[i].ty + t * y,
                      sums_[i].yy + y * y};
    }
  }
  /// Sum of squared distances of points [first, last) to their line.
  [[nodiscard]] double operator()(std::size_t first, std::size_t last) const {
    const Sums& a = sums_[first];
    const Sums& b = sums_[last];
    const double n = static_cast<double>(last - first);
    const double t = b.t - a.t;
    const double y = b.y - a.y;
    const double tt = b.tt - a.tt - t * t / n;
    const double ty = b.ty - a.ty - t * y / n;
    const double yy = b.yy - a.yy - y * y / n;
    return tt > 0.0 ? std::max(0.0, yy - ty * ty / tt) : std::max(0.0, yy);
  }

 private:
  struct Sums {
    double t = 0.0, y = 0.0, tt = 0.0, ty = 0.0, yy = 0.0;
  };
  std::vector<Sums> sums_;
};

}  // namespace

PhaseScale PhaseScale::of(const GroupCourse& course, double duration_s, double interval_s) {
  PhaseScale scale;
  // A fiftieth of the record, at most ten minutes: a shorter stop on the way up is no hold. Never less than
  // what three readings span.
  scale.shortest_s = std::max(std::min(0.02 * duration_s, 600.0), 2.5 * interval_s);
  // 5 K: what controllers swing; 1.5 % of the range: 9 K on the way to 600 C.
  scale.smallest_k = std::max({5.0, 6.0 * course.noise_k, 0.015 * course.range_k});
  // 8 K/h is between what a hold moves by itself and the slowest ramp in use (20 K/h); a record of minutes
  // has ramps of thousands of K/h and its holds settle faster too: 3 % of its mean pace.
  const double pace = duration_s > 0.0 ? course.range_k / duration_s : 0.0;
  scale.level_slope = std::max(8.0 / 3600.0, 0.03 * pace);
  return scale;
}

StraightPiece piece_of(const GroupCourse& course, std::size_t first, std::size_t last) {
  StraightPiece piece{first, last, 0.0, 0.0};
  const double n = static_cast<double>(last - first);
  double t = 0.0;
  double y = 0.0;
  for (std::size_t i = first; i < last; ++i) {
    t += course.times_s[i];
    y += course.celsius[i];
  }
  t /= n;
  y /= n;
  double tt = 0.0;
  double ty = 0.0;
  for (std::size_t i = first; i < last; ++i) {
    tt += (course.times_s[i] - t) * (course.times_s[i] - t);
    ty += (course.times_s[i] - t) * (course.celsius[i] - y);
  }
  const double slope = tt > 0.0 ? ty / tt : 0.0;
  piece.start_c = y + slope * (course.times_s[first] - t);
  piece.end_c = y + slope * (course.times_s[last - 1] - t);
  return piece;
}

std::vector<StraightPiece> straight_pieces(const GroupCourse& course, const PhaseScale& scale) {
  const std::size_t points = course.points();
  if (points < 2) return {};
  const std::size_t intervals = std::min(points, kMostNodes);
  const auto node = [&](std::size_t i) { return i * points / intervals; };

  // The price of a piece: a bend must be worth 1 K (or 0.3 % of the range) over the shortest phase, and well
  // above what noise can gain by chance (a few squares of its deviation).
  const double worth = std::max(1.0, 0.003 * course.range_k);
  const double price = std::max(worth * worth * scale.shortest_s / std::max(course.step_s, 1e-9),
                                25.0 * course.noise_k * course.noise_k);

  const PieceCost cost(course);
  std::vector<double> best(intervals + 1, std::numeric_limits<double>::max());
  std::vector<std::size_t> from(intervals + 1, 0);
  best[0] = 0.0;
  // Where a last piece may begin. A piece costs no less than its two halves: a beginning that is clearly
  // worse than ending one piece here and going on with another is so at every later end too (Killick,
  // Fearnhead and Eckley 2012, J. Am. Stat. Assoc. 107, 1590: PELT, from memory).
  std::vector<std::size_t> begins{0};
  std::vector<double> costs;
  for (std::size_t end = 1; end <= intervals; ++end) {
    costs.clear();
    for (const std::size_t begin : begins) {
      const double own = cost(node(begin), node(end));
      costs.push_back(best[begin] + own);
      const double total = best[begin] + price + own;
      if (total < best[end]) {
        best[end] = total;
        from[end] = begin;
      }
    }
    std::size_t kept = 0;
    for (std::size_t i = 0; i < begins.size(); ++i)
      if (costs[i] <= best[end] + kClearlyWorse * price) begins[kept++] = begins[i];
    begins.resize(kept);
    begins.push_back(end);
  }
  std::vector<StraightPiece> pieces;
  for (std::size_t end = intervals; end > 0; end = from[end])
    pieces.push_back(piece_of(course, node(from[end]), node(end)));
  std::reverse(pieces.begin(), pieces.end());
  return pieces;
}

}  // namespace soakwright
