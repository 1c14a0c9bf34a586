// SPDX-License-Identifier: GPL-3.0-or-later
// Where a rate is beyond its limit, and where that is certain.
#include <algorithm>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/rates/stage_rates.h"

using namespace soakwright;

TEST_CASE("Windows beyond the limit make places, and four standard errors make them certain") {
  // 120 °C/h from 40 to 70 min, else 60. The corners do not count as noise: s is that of the last digit,
  // q/√12. Windows have 15 rows, a minute apart.
  const Traced made = minutes(121, {{0, 20}, {40, 60}, {70, 120}, {120, 170}});
  const double four_se = 4 * (0.1 / std::sqrt(12.0)) * 60.0 * std::sqrt(12.0 / (15.0 * 224.0));
  REQUIRE(four_se == close_to(0.414, 0.0005));
  SECTION("at the limit there is none") {
    CHECK(rate_of(made, heat(), 120).places.empty());
    CHECK(rate_of(made, heat(), 120 - 5e-7).places.empty());  // slack
  }
  SECTION("less than 4 standard errors beyond it") {
    const StageRate rate = rate_of(made, heat(), 119.6);
    REQUIRE(rate.places.size() == 1);
    CHECK_FALSE(rate.places[0].certain);
    CHECK(rate.places[0].steepest.window.slope_c_per_h == close_to(120));
  }
  SECTION("more than 4 standard errors beyond it") {
    const StageRate rate = rate_of(made, heat(), 119.5);
    REQUIRE(rate.places.size() == 1);
    CHECK(rate.places[0].certain);
    // All windows within 40…70 min are beyond: from 39.5 min to 70.5 min at the least.
    CHECK(rate.places[0].time.first <= 40 * 60);
    CHECK(rate.places[0].time.second >= 70 * 60);
  }
}

TEST_CASE("A spike makes no window certain, however steep it is with it") {
  // 60 °C/h with a limit of 100; one reading of 15 in a window 40 K high. SE is that of the last digit: the
  // slope is far beyond the limit with the spike, and without a tenth of the readings (one) it is not.
  std::vector<double> values;
  for (int row = 0; row < 61; ++row) values.push_back(100 + row + (row == 30 ? 40 : 0));
  const StageRate rate = rate_of(Traced(MadeRecord::every(60, 61).column("TC1", values)), heat(), 100);
  REQUIRE(rate.places.size() == 1);
  CHECK(rate.places[0].steepest.window.slope_c_per_h - 4 * rate.places[0].steepest.standard_error > 100);
  CHECK_FALSE(rate.places[0].certain);
}

TEST_CASE("Where a spike makes the steepest window, another may still be certain, and is told") {
  // 90 °C/h with a limit of 120, a spike of 40 K at 30 min (a window that ends or begins there: 150), and 132
  // °C/h from 36 to 66 min.
  std::vector<double> values;
  for (int row = 0; row < 101; ++row)
    values.push_back(100 + 1.5 * row + 0.7 * std::clamp(row - 36, 0, 30) + (row == 30 ? 40 : 0));
  const StageRate rate = rate_of(Traced(MadeRecord::every(60, 101).column("TC1", values)), heat(), 120);
  REQUIRE(rate.places.size() == 1);
  REQUIRE(rate.places[0].certain);
  CHECK(rate.worst->window.at_s < 40 * 60);
  CHECK(rate.worst->window.slope_c_per_h == close_to(150));
  CHECK(rate.places[0].certain->window.slope_c_per_h == close_to(132));
}

TEST_CASE("Excursions apart from each other are places of their own") {
  const Traced made = minutes(301, {{0, 20}, {40, 60}, {70, 120}, {200, 250}, {230, 310}, {300, 380}});
  const StageRate rate = rate_of(made, heat(), 100);
  REQUIRE(rate.places.size() == 2);
  CHECK(rate.places[0].time.second < rate.places[1].time.first);
  CHECK(rate.places[0].certain);
  CHECK(rate.places[1].certain);
}
