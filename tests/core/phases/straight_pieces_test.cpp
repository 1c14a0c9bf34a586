// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: the definition of the optimal partition, by trying every piece (Bellman 1961).
#include "core/phases/straight_pieces.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include <catch2/catch.hpp>

using soakwright::GroupCourse;
using soakwright::PhaseScale;
using soakwright::StraightPiece;

namespace {

/// Sum of squared distances to the piece's own line.
double distance(const GroupCourse& course, std::size_t first, std::size_t last) {
  const StraightPiece piece = soakwright::piece_of(course, first, last);
  const double span = course.times_s[last - 1] - course.times_s[first];
  double sum = 0.0;
  for (std::size_t i = first; i < last; ++i) {
    const double share = span > 0.0 ? (course.times_s[i] - course.times_s[first]) / span : 0.0;
    const double apart = course.celsius[i] - (piece.start_c + share * (piece.end_c - piece.start_c));
    sum += apart * apart;
  }
  return sum;
}

double price_of(const GroupCourse& course, const PhaseScale& scale) {
  const double worth = std::max(1.0, 0.003 * course.range_k);
  return std::max(worth * worth * scale.shortest_s / course.step_s, 25.0 * course.noise_k * course.noise_k);
}

/// The least that any partition comes to.
double least(const GroupCourse& course, double price) {
  std::vector<double> best(course.points() + 1, std::numeric_limits<double>::max());
  best[0] = 0.0;
  for (std::size_t end = 1; end <= course.points(); ++end)
    for (std::size_t begin = 0; begin < end; ++begin)
      best[end] = std::min(best[end], best[begin] + price + distance(course, begin, end));
  return best.back();
}

GroupCourse wandering(unsigned seed, std::size_t points, double noise_k) {
  std::mt19937 random(seed);
  std::normal_distribution<double> normal(0.0, 1.0);
  GroupCourse course;
  course.step_s = 60.0;
  course.noise_k = noise_k;
  double celsius = 20.0;
  double slope = 2.0;
  for (std::size_t i = 0; i < points; ++i) {
    if (random() % 40 == 0) slope = 3.0 * normal(random);
    celsius += slope;
    course.times_s.push_back(60.0 * static_cast<double>(i));
    course.celsius.push_back(celsius + noise_k * normal(random));
  }
  const auto [low, high] = std::minmax_element(course.celsius.begin(), course.celsius.end());
  course.lowest_c = *low;
  course.highest_c = *high;
  course.range_k = *high - *low;
  return course;
}

}  // namespace

TEST_CASE("no other partition into straight pieces costs less") {
  for (unsigned seed = 1; seed <= 12; ++seed) {
    const GroupCourse course = wandering(seed, 150 + 10 * seed, seed % 3 == 0 ? 2.0 : 0.1);
    const PhaseScale scale =
        PhaseScale::of(course, course.times_s.back() - course.times_s.front(), course.step_s);
    const double price = price_of(course, scale);
    const std::vector<StraightPiece> pieces = soakwright::straight_pieces(course, scale);
    double cost = price * static_cast<double>(pieces.size());
    std::size_t next = 0;
    for (const StraightPiece& piece : pieces) {
      CHECK(piece.first == next);
      next = piece.last;
      cost += distance(course, piece.first, piece.last);
    }
    CHECK(next == course.points());
    INFO("seed " << seed << ", " << pieces.size() << " pieces");
    CHECK(cost == Approx(least(course, price)).epsilon(1e-9));
  }
}
