// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/phase_corners.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/phases/robust.h"

namespace soakwright {

namespace {

// The ramp's line is fitted on a part of it near the corner, from `near` to `near + wide` away in
// temperature. Leaving a level, the work obeys at once though it lags: the first few kelvin tell when.
constexpr double kLeaveNearK = 1.0;
constexpr double kLeaveWideK = 8.0;
// Arriving, it bends before it arrives: the bend is left out, as a share of the ramp's height within bounds.
constexpr double kArriveNearShare = 0.04;
constexpr double kArriveNearLeastK = 4.0;
constexpr double kArriveNearMostK = 25.0;
constexpr double kArriveWideShare = 0.12;
constexpr double kArriveWideLeastK = 12.0;
// A level that is left is measured over its last sixth, of this many points at least.
constexpr std::size_t kPointsOfHeight = 7;
// Both no smaller than what noise can feign, in standard deviations of a point.
constexpr double kNearNoises = 5.0;
constexpr double kWideNoises = 10.0;

/// Part of a ramp of `height` on which its line is fitted, as distances from the corner's temperature.
struct FittedPart {
  double near_k = 0.0;
  double far_k = 0.0;
  static FittedPart of(double height, bool leaving, double noise) {
    FittedPart part;
    const double arrive = std::clamp(kArriveNearShare * height, kArriveNearLeastK, kArriveNearMostK);
    part.near_k = std::min(std::max(leaving ? kLeaveNearK : arrive, kNearNoises * noise), 0.3 * height);
    const double wide = leaving ? kLeaveWideK : std::max(kArriveWideShare * height, kArriveWideLeastK);
    part.far_k = std::min(part.near_k + std::max(wide, kWideNoises * noise), 0.8 * height);
    return part;
  }
};

class CornerFinder {
 public:
  CornerFinder(const GroupCourse& course, const std::vector<Run>& runs) : course_(course), runs_(runs) {}

  std::vector<Corner> all() {
    std::vector<Corner> corners;
    corners.push_back({course_.times_s.front(), runs_.front().start_c});
    for (std::size_t i = 0; i + 1 < runs_.size(); ++i) corners.push_back(between(i));
    corners.push_back({course_.times_s.back(), runs_.back().end_c});
    for (std::size_t i = 1; i < corners.size(); ++i)
      corners[i].time_s = std::max(corners[i].time_s, corners[i - 1].time_s);
    return corners;
  }

 private:
  [[nodiscard]] std::size_t middle(std::size_t run) const {
    return std::min((runs_[run].first + runs_[run].last) / 2, course_.points() - 1);
  }
  [[nodiscard]] double border_s(std::size_t run) const {  // between run and run + 1
    const std::size_t i = std::clamp<std::size_t>(runs_[run].last, 1, course_.points() - 1);
    return 0.5 * (course_.times_s[i - 1] + course_.times_s[i]);
  }

  /// The level's own line: where it is left, the height of its last part, since it may have been settling
  /// before; where it is come to, the line of all but its first tenth, since that may be the overshoot.
  [[nodiscard]] Line level_line(const Run& run, bool left) const {
    const std::size_t n = run.last - run.first;
    const std::size_t skip_back = n / 20;  // the border may lie a little late
    std::size_t count = n - n / 10 - skip_back;
    if (left) count = std::min(count, std::max(kPointsOfHeight, n / 6));
    const std::size_t first = run.last - skip_back - count;
    const std::span<const double> t{course_.times_s};
    const std::span<const double> y{course_.celsius};
    if (!left) return robust_line(t.subspan(first, count), y.subspan(first, count));
    const auto last_part = y.subspan(first, count);
    return {t[first], median_of({last_part.begin(), last_part.end()}), 0.0};
  }

  /// Line of ramp `run` beside its corner at height `corner_c`, at its start or its end. `innermost` becomes
  /// the time of the point nearest to the corner that still belongs to the ramp.
  [[nodiscard]] std::optional<Line> ramp_line(std::size_t run, bool at_start, double corner_c,
                                              double& innermost_s) const {
    const double far_c = at_start ? runs_[run].end_c : runs_[run].start_c;
    const double height = std::abs(far_c - corner_c);
    const double sign = far_c > corner_c ? 1.0 : -1.0;
    const FittedPart part = FittedPart::of(height, at_start, course_.noise_k);
    // From the ramp's far end towards the corner: to the part, then along it.
    const auto away = [&](std::size_t i) { return sign * (course_.celsius[i] - corner_c); };
    const std::ptrdiff_t step = at_start ? -1 : 1;
    const std::size_t neighbour = at_start ? run + 1 : run - 1;
    const bool has_neighbour = at_start ? run + 1 < runs_.size() : run > 0;
    std::ptrdiff_t i = 0;
    if (runs_[run].last > runs_[run].first)
      i = static_cast<std::ptrdiff_t>(at_start ? runs_[run].last - 1 : runs_[run].first);
    else if (has_neighbour)
      i = static_cast<std::ptrdiff_t>(middle(neighbour));
    else
      return std::nullopt;
    const auto inside = [&](std::ptrdiff_t k) {
      return k >= 0 && k < static_cast<std::ptrdiff_t>(course_.points());
    };
    const auto index = [](std::ptrdiff_t k) { return static_cast<std::size_t>(k); };
    while (inside(i) && away(index(i)) > part.far_k) i += step;
    std::vector<double> t;
    std::vector<double> y;
    std::ptrdiff_t k = i;
    for (; inside(k) && away(index(k)) > part.near_k; k += step) {
      t.push_back(course_.times_s[index(k)]);
      y.push_back(course_.celsius[index(k)]);
    }
    constexpr std::size_t kPointsForLine = 3;
    if (t.size() < kPointsForLine) {  // steep: take the points on either side as well
      if (inside(i - step)) {
        t.insert(t.begin(), course_.times_s[index(i - step)]);
        y.insert(y.begin(), course_.celsius[index(i - step)]);
      }
      if (t.size() < 2 && inside(k)) {
        t.push_back(course_.times_s[index(k)]);
        y.push_back(course_.celsius[index(k)]);
      }
    }
    if (t.size() < 2) return std::nullopt;
    innermost_s = t.back();
    if (!at_start) return robust_line(t, y);
    std::reverse(t.begin(), t.end());
    std::reverse(y.begin(), y.end());
    return robust_line(t, y);
  }

  [[nodiscard]] Corner level_meets_ramp(std::size_t level, std::size_t ramp) const {
    const bool level_first = level < ramp;
    const Line flat = level_line(runs_[level], level_first);
    const double border = border_s(std::min(level, ramp));
    double innermost = border;
    const auto slope = ramp_line(ramp, level_first, flat.at(border), innermost);
    if (!slope || slope->slope == flat.slope) return {border, flat.at(border)};
    const double lower = level_first ? course_.times_s[middle(level)] : course_.times_s[runs_[ramp].first];
    const std::size_t ramp_end = std::max<std::size_t>(runs_[ramp].last, 1) - 1;
    const double upper = level_first ? course_.times_s[ramp_end] : course_.times_s[middle(level)];
    // Where flat and slope are equal.
    const double time =
        slope->origin_s + (flat.at(slope->origin_s) - slope->at_origin) / (slope->slope - flat.slope);
    const double clamped = std::clamp(time, std::min(lower, upper), std::max(lower, upper));
    return {clamped, flat.at(clamped)};
  }

  [[nodiscard]] Corner ramp_meets_ramp(std::size_t run) const {
    const std::size_t from = middle(run);
    const std::size_t to = std::max(middle(run + 1), from);
    const auto begin = course_.celsius.begin();
    const auto first = begin + static_cast<std::ptrdiff_t>(from);
    const auto last = begin + static_cast<std::ptrdiff_t>(to) + 1;
    const bool peak = runs_[run].kind == Run::Kind::rise;
    const auto extreme = peak ? std::max_element(first, last) : std::min_element(first, last);
    const Corner found{course_.times_s[static_cast<std::size_t>(extreme - begin)], *extreme};
    if (runs_[run].kind == runs_[run + 1].kind) return {border_s(run), runs_[run].end_c};
    double before_s = found.time_s;
    double after_s = found.time_s;
    const auto before = ramp_line(run, false, found.celsius, before_s);
    const auto after = ramp_line(run + 1, true, found.celsius, after_s);
    if (!before || !after || before->slope == after->slope || before_s > after_s) return found;
    const double time =
        before->origin_s + (after->at(before->origin_s) - before->at_origin) / (before->slope - after->slope);
    const double clamped = std::clamp(time, before_s, after_s);
    return {clamped, before->at(clamped)};
  }

  [[nodiscard]] Corner between(std::size_t run) const {
    const bool level = !runs_[run].ramp();
    const bool next_level = !runs_[run + 1].ramp();
    if (level && next_level) return {border_s(run), runs_[run].end_c};
    if (level) return level_meets_ramp(run, run + 1);
    if (next_level) return level_meets_ramp(run + 1, run);
    return ramp_meets_ramp(run);
  }

  const GroupCourse& course_;
  const std::vector<Run>& runs_;
};

}  // namespace

std::vector<Corner> phase_corners(const GroupCourse& course, const std::vector<Run>& runs) {
  if (runs.empty()) return {};
  return CornerFinder(course, runs).all();
}

}  // namespace soakwright
