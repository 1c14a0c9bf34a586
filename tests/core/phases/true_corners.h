// SPDX-License-Identifier: GPL-3.0-or-later
// The corners of a made-up run, from its noise-free course.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/core/phases/run.h"

namespace soakwright::made {

/// Where the course has settled at the level of these rows: the last row that is 1 K away from where it rests
/// in the level's second half.
inline std::size_t settled_row(const Run& run, std::size_t first, std::size_t last) {
  std::vector<double> rest(run.course_c.begin() + static_cast<std::ptrdiff_t>((first + last) / 2),
                           run.course_c.begin() + static_cast<std::ptrdiff_t>(last) + 1);
  std::sort(rest.begin(), rest.end());
  const double level = rest[rest.size() / 2];
  std::size_t settled = (first + last) / 2;
  while (settled > first && std::abs(run.course_c[settled - 1] - level) <= 1.0) --settled;
  return settled;
}

/// The first row at which the course has left by 1 K where it was.
inline std::size_t left_row(const Run& run, std::size_t first, std::size_t last) {
  std::size_t left = first;
  while (left < last && std::abs(run.course_c[left] - run.course_c[first]) <= 1.0) ++left;
  return left;
}

/// A gap over the bend hides it: then it is anywhere in the gap.
inline void widen_over_gaps(const Record& record, TrueCorner& corner) {
  const std::vector<double>& t = record.times_s;
  for (std::size_t r = 0; r + 1 < t.size(); ++r)
    if (t[r + 1] - t[r] > 1.5 * record.interval_s && t[r] <= corner.to_s && t[r + 1] >= corner.from_s) {
      corner.from_s = std::min(corner.from_s, t[r]);
      corner.to_s = std::max(corner.to_s, t[r + 1]);
    }
}

/// Where the noise-free course bends at each corner of the programme.
inline std::vector<TrueCorner> true_corners(const Run& run) {
  const std::vector<double>& t = run.record.times_s;
  const auto row_at = [&](double s) {
    return std::min(static_cast<std::size_t>(std::lower_bound(t.begin(), t.end(), s) - t.begin()),
                    t.size() - 1);
  };
  std::vector<TrueCorner> corners;
  double at_s = 0.0;
  for (std::size_t p = 0; p + 1 < run.parts.size(); ++p) {
    at_s += run.parts[p].seconds;
    const std::size_t first = row_at(at_s);
    const std::size_t last = row_at(at_s + run.parts[p + 1].seconds);
    TrueCorner corner{at_s, at_s, true};
    const bool arrives = run.parts[p + 1].from_c == run.parts[p + 1].to_c;
    if (arrives) {
      corner.to_s = std::max(at_s, t[settled_row(run, first, last)]);
      corner.sharp = !(run.natural_cooling && run.parts[p].kind == Phase::Kind::cool);
    } else {
      corner.to_s = t[left_row(run, first, last)];
    }
    corner.to_s = std::max(corner.to_s, at_s + run.lag_s);
    widen_over_gaps(run.record, corner);
    corners.push_back(corner);
  }
  return corners;
}

}  // namespace soakwright::made
