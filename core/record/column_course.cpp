// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/column_course.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>

namespace soakwright {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

/// Readings of two courses at the same times.
struct Pairs {
  std::vector<double> x, y;
};

Pairs pairs_of(const ColumnCourse& course, const ColumnCourse& group, std::size_t from, std::size_t to) {
  Pairs pairs;
  for (std::size_t i = from; i < to; ++i) {
    if (std::isnan(course.values[i]) || std::isnan(group.values[i])) continue;
    pairs.x.push_back(group.values[i]);
    pairs.y.push_back(course.values[i]);
  }
  return pairs;
}

/// How far `y` follows `x`: correlation, and what y moves for each degree of x (geometric mean regression).
struct Likeness {
  double correlation = 0.0;
  double gain = 0.0;
};

std::optional<Likeness> likeness_of(const Pairs& pairs) {
  const auto count = static_cast<double>(pairs.x.size());
  double mean_x = 0.0;
  double mean_y = 0.0;
  for (std::size_t i = 0; i < pairs.x.size(); ++i) {
    mean_x += pairs.x[i] / count;
    mean_y += pairs.y[i] / count;
  }
  double xx = 0.0;
  double yy = 0.0;
  double xy = 0.0;
  for (std::size_t i = 0; i < pairs.x.size(); ++i) {
    xx += (pairs.x[i] - mean_x) * (pairs.x[i] - mean_x);
    yy += (pairs.y[i] - mean_y) * (pairs.y[i] - mean_y);
    xy += (pairs.x[i] - mean_x) * (pairs.y[i] - mean_y);
  }
  if (!(xx > 0.0) || !(yy > 0.0)) return std::nullopt;
  return Likeness{xy / std::sqrt(xx * yy), std::sqrt(yy / xx)};
}

double range_of(const std::vector<double>& values) {
  if (values.empty()) return 0.0;
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return *high - *low;
}

constexpr double kAboveAmbient = 100.0;

/// Half of the readings are near the group's, or a tenth where that is hot, and they are not one and the same
/// number.
bool reads_about_the_same(const Pairs& pairs) {
  constexpr double kNear = 10.0;
  constexpr double kShareOfLevel = 0.1;
  std::size_t near = 0;
  std::size_t near_and_hot = 0;
  for (std::size_t i = 0; i < pairs.x.size(); ++i) {
    if (std::fabs(pairs.y[i] - pairs.x[i]) > std::max(kNear, kShareOfLevel * std::fabs(pairs.x[i]))) continue;
    ++near;
    if (pairs.x[i] > 1.2 * kAboveAmbient) ++near_and_hot;
  }
  if (2 * near <= pairs.x.size() && 10 * near_and_hot < pairs.x.size()) return false;
  return pairs.x.size() < 3 || range_of(pairs.y) > 0.0;
}

/// Most readings are between a third and one and a half of the group's, well above ambient, and they scatter.
bool reads_a_share_of_the_same(const Pairs& pairs) {
  std::size_t share = 0;
  for (std::size_t i = 0; i < pairs.x.size(); ++i)
    if (pairs.y[i] > kAboveAmbient && 3.0 * pairs.y[i] >= pairs.x[i] && pairs.y[i] <= 1.5 * pairs.x[i])
      ++share;
  return 10 * share > 9 * pairs.x.size() && range_of(pairs.y) > 0.0;
}

}  // namespace

std::vector<std::size_t> sampled_rows(std::size_t rows) {
  std::vector<std::size_t> out(std::min(rows, kMostSamples));
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = i * rows / out.size();
  return out;
}

ColumnCourse course_of(const LogTable& table, const LogColumn& column, std::span<const double> times_s,
                       std::span<const std::size_t> rows) {
  ColumnCourse course;
  const double power = std::pow(10.0, column.places);
  course.last_digit = 1.0 / power;
  for (const std::size_t row : rows) {
    course.times_s.push_back(times_s[row]);
    course.values.push_back(table.number(column, row, power));
  }
  return course;
}

std::size_t straight_pieces(const ColumnCourse& course) {
  // Two rounded numbers on one line lie up to a whole last digit off each other's course.
  const double room = 1.001 * course.last_digit;
  std::size_t pieces = 0;
  double flattest = 0.0;
  double steepest = 0.0;
  std::optional<std::size_t> first;
  for (std::size_t i = 0; i < course.values.size(); ++i) {
    if (std::isnan(course.values[i])) continue;
    if (first) {
      const double time = course.times_s[i] - course.times_s[*first];
      const double step = course.values[i] - course.values[*first];
      flattest = std::max(flattest, (step - room) / time);
      steepest = std::min(steepest, (step + room) / time);
      if (flattest <= steepest) continue;
    }
    ++pieces;
    first = i;
    flattest = -std::numeric_limits<double>::infinity();
    steepest = std::numeric_limits<double>::infinity();
  }
  return pieces;
}

std::size_t turns(const ColumnCourse& course) {
  std::size_t count = 0;
  double direction = 0.0;
  std::optional<double> before;
  for (const double value : course.values) {
    if (std::isnan(value)) continue;
    const double step = before ? value - *before : 0.0;
    before = value;
    if (step == 0.0) continue;
    if (direction * step < 0.0) ++count;
    direction = step;
  }
  return count;
}

std::size_t corners(const ColumnCourse& course) {
  std::size_t count = 0;
  std::vector<std::size_t> there;
  for (std::size_t i = 0; i < course.values.size(); ++i)
    if (!std::isnan(course.values[i])) there.push_back(i);
  for (std::size_t i = 1; i + 1 < there.size(); ++i) {
    const std::size_t a = there[i - 1];
    const std::size_t b = there[i];
    const std::size_t c = there[i + 1];
    const double share = (course.times_s[b] - course.times_s[a]) / (course.times_s[c] - course.times_s[a]);
    const double on_line = course.values[a] + share * (course.values[c] - course.values[a]);
    if (std::fabs(course.values[b] - on_line) > 1.001 * course.last_digit) ++count;
  }
  return count;
}

std::size_t readings_in(const ColumnCourse& course) {
  return static_cast<std::size_t>(std::count_if(course.values.begin(), course.values.end(),
                                                [](double value) { return !std::isnan(value); }));
}

bool all_within(const ColumnCourse& course, double low, double high) {
  return readings_in(course) != 0 &&
         std::all_of(course.values.begin(), course.values.end(),
                     [&](double value) { return std::isnan(value) || (value >= low && value <= high); });
}

double range_of(const ColumnCourse& course) {
  std::vector<double> values;
  for (const double value : course.values)
    if (!std::isnan(value)) values.push_back(value);
  return range_of(values);
}

bool are_states(const ColumnCourse& course) {
  constexpr std::size_t kMostStates = 4;
  constexpr double kHighestState = 9.0;
  std::set<double> states;
  for (const double value : course.values) {
    if (std::isnan(value)) continue;
    if (value != std::floor(value) || value < 0.0 || value > kHighestState) return false;
    states.insert(value);
    if (states.size() > kMostStates) return false;
  }
  return !states.empty();
}

bool counts_rows(const ColumnCourse& course, std::span<const std::size_t> rows) {
  std::optional<std::size_t> before;
  std::size_t steps = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (std::isnan(course.values[i])) continue;
    if (before) {
      if (course.values[i] - course.values[*before] != static_cast<double>(rows[i] - rows[*before]))
        return false;
      ++steps;
    }
    before = i;
  }
  return steps > 1;
}

bool runs_as(const ColumnCourse& course, const ColumnCourse& group, bool throughout) {
  constexpr double kMoves = 20.0;
  constexpr double kLeastGain = 0.2;
  constexpr double kMostGain = 3.0;
  const auto follows = [](const Pairs& pairs, double least_correlation) {
    if (pairs.x.size() < 3 || range_of(pairs.x) < kMoves) return false;
    const auto likeness = likeness_of(pairs);
    return likeness && likeness->correlation >= least_correlation && likeness->gain >= kLeastGain &&
           likeness->gain <= kMostGain;
  };
  const std::size_t size = course.values.size();
  const Pairs all = pairs_of(course, group, 0, size);
  if (throughout) return follows(all, 0.9);
  if (follows(all, 0.8) || (!all.x.empty() && reads_about_the_same(all))) return true;
  if (range_of(all.x) < kMoves) return !all.x.empty() && reads_a_share_of_the_same(all);
  // Parts in which the group moves by a fair share of its range.
  constexpr std::size_t kParts = 8;
  const double whole = range_of(all.x);
  for (std::size_t length = 1; length <= kParts; length *= 2)
    for (std::size_t part = 0; part < kParts; part += length) {
      const Pairs pairs = pairs_of(course, group, part * size / kParts, (part + length) * size / kParts);
      if (pairs.x.size() >= 5 && 5.0 * range_of(pairs.x) >= whole && follows(pairs, 0.95)) return true;
    }
  return false;
}

ColumnCourse where_both_read(ColumnCourse course, const ColumnCourse& other) {
  for (std::size_t i = 0; i < course.values.size(); ++i)
    if (std::isnan(other.values[i])) course.values[i] = kNone;
  return course;
}

ColumnCourse median_of(std::span<const ColumnCourse> courses) {
  ColumnCourse out = courses.front();
  std::vector<double> here;
  for (std::size_t i = 0; i < out.values.size(); ++i) {
    here.clear();
    for (const ColumnCourse& course : courses)
      if (!std::isnan(course.values[i])) here.push_back(course.values[i]);
    out.values[i] = kNone;
    if (here.empty()) continue;
    const auto middle = here.begin() + static_cast<std::ptrdiff_t>(here.size() / 2);
    std::nth_element(here.begin(), middle, here.end());
    out.values[i] = *middle;
  }
  return out;
}

}  // namespace soakwright
