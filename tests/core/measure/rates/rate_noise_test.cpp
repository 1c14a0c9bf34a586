// SPDX-License-Identifier: GPL-3.0-or-later
// The noise of the readings that a rate is taken from, and the standard error that follows.
#include <algorithm>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/rates/stage_rates.h"

using namespace soakwright;

TEST_CASE("The noise is that of the middle readings about the lines between their neighbours") {
  SECTION("even steps: d²/1.5") {
    // 10.0 and 10.3 in turn: every d is 0.3, e = 0.09 / 1.5 = 0.06, s² = 0.06 / 0.4549.
    std::vector<double> values;
    for (int row = 0; row < 40; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);
    const Traced made(MadeRecord::every(60, 40).column("TC1", values));
    CHECK(rate_of(made, heat()).noise_k[0] == close_to(std::sqrt(0.06 / 0.4549), 1e-12));
  }
  SECTION("uneven steps: d²/(1 + w² + (1 − w)²)") {
    // Steps of 60 and 120 s in turn; 0 and 1 in turn. With w = 1/3 or 2/3 the divisor is 1 + 1/9 + 4/9 =
    // 14/9, and d is ±1: e = 9/14.
    std::vector<double> times{0};
    std::vector<double> values{0};
    for (int row = 1; row < 41; ++row) {
      times.push_back(times.back() + (row % 2 == 1 ? 60 : 120));
      values.push_back(row % 2);
    }
    const Traced made(MadeRecord(times).column("TC1", values));
    CHECK(rate_of(made, heat()).noise_k[0] == close_to(std::sqrt(9.0 / 14.0 / 0.4549), 1e-12));
  }
  SECTION("a straight ramp has none but that of the last digit, q²/12") {
    struct Case {
      int decimals;
      TemperatureUnit unit;
      double q_k;
    };
    const Case cases[] = {{1, TemperatureUnit::celsius, 0.1},
                          {0, TemperatureUnit::celsius, 1.0},
                          {2, TemperatureUnit::celsius, 0.01},
                          {0, TemperatureUnit::fahrenheit, 5.0 / 9.0}};
    for (const Case& c : cases) {
      CAPTURE(c.decimals, c.q_k);
      std::vector<double> values;
      for (int row = 0; row < 40; ++row) values.push_back(100 + 2 * row);
      const Traced made(MadeRecord::every(60, 40).column("TC1", values, c.decimals, c.unit));
      CHECK(rate_of(made, heat()).noise_k[0] == close_to(c.q_k / std::sqrt(12.0), 1e-12));
    }
  }
}

TEST_CASE("Noise counts only where the rate is evaluated, and no triple reaches from part to part") {
  // 10.0 and 10.3 in turn below 100 (e = 0.06, most of all triples), then a step and a straight ramp.
  std::vector<double> values;
  for (int row = 0; row < 90; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);
  for (int row = 0; row < 40; ++row) values.push_back(100 + 2 * row);
  const auto noise_of = [&](double above) {
    return rate_of(Traced(MadeRecord::every(60, values.size()).column("TC1", values)), heat(above))
        .noise_k[0];
  };
  CHECK(noise_of(5) == close_to(std::sqrt(0.06 / 0.4549), 1e-12));
  CHECK(noise_of(100) == close_to(0.1 / std::sqrt(12.0), 1e-12));
  // Two straight pieces of six readings with a jump across a hole: eight triples, whose mean is 0; a triple
  // across the hole would have made it large.
  std::vector<double> pieces;
  for (int row = 0; row < 6; ++row) pieces.push_back(100 + 2 * row);
  for (int row = 0; row < 5; ++row) pieces.push_back(kNoReading);
  for (int row = 0; row < 6; ++row) pieces.push_back(400 + 2 * row);
  const Traced holed(MadeRecord::every(60, pieces.size()).column("TC1", pieces));
  CHECK(rate_of(holed, heat(100)).noise_k[0] == close_to(0.1 / std::sqrt(12.0), 1e-12));
}

TEST_CASE("A window's own noise counts where it is larger than the channel's, a spike elsewhere does not") {
  // Straight at 2 K a minute but for 20 rows of a zigzag of 1 K: its triples have d = 1, e = 2/3. One reading
  // is 40 K high. Windows of 30 min have 31 rows, 29 triples.
  std::vector<double> values;
  for (int row = 0; row < 200; ++row) {
    const bool rough = row >= 100 && row < 131;
    values.push_back(100 + 2 * row + (rough && row % 2 == 1 ? 1.0 : 0.0) + (row == 30 ? 40.0 : 0.0));
  }
  const Traced made(MadeRecord::every(60, values.size()).column("TC1", values));
  const auto window_at = [&](double from_min, double to_min) {
    return rate_of(made, heat(), 1e9, 1800, Span{from_min * 60, to_min * 60}).worst;
  };
  // The stage is the window: the channel's level is that of its 29 triples.
  CHECK(window_at(60, 90)->standard_error * window_at(60, 90)->window.root_sxx_h ==
        close_to(0.1 / std::sqrt(12.0), 1e-9));
  CHECK(window_at(100, 130)->standard_error * window_at(100, 130)->window.root_sxx_h ==
        close_to(std::sqrt(2.0 / 3.0 / 0.4549), 1e-9));
  // In the whole record most triples are straight, yet a window in the rough rows has their noise. Its slope
  // is made the steepest by a rise of 10 K a minute there.
  std::vector<double> steep = values;
  for (int row = 100; row < 200; ++row) steep[static_cast<std::size_t>(row)] += 8.0 * std::min(row - 100, 30);
  const Traced all(MadeRecord::every(60, steep.size()).column("TC1", steep));
  const auto worst = rate_of(all, heat(), 1e9, 1800).worst;
  REQUIRE(worst->window.at_s == 115 * 60);
  CHECK(worst->standard_error * worst->window.root_sxx_h == close_to(std::sqrt(2.0 / 3.0 / 0.4549), 1e-9));
  CHECK(rate_of(all, heat(), 1e9, 1800).noise_k[0] == close_to(0.1 / std::sqrt(12.0), 1e-12));
}

TEST_CASE("The standard error of a slope is the noise over the root of Sxx") {
  // 10.0 and 10.3 in turn, a row a minute, 15 min: 15 rows. SE = s/Δt·√(12/(n(n² − 1))), s² = 0.06 / 0.4549.
  std::vector<double> values;
  for (int row = 0; row < 40; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);
  const Traced made(MadeRecord::every(60, 40).column("TC1", values));
  const double closed = std::sqrt(0.06 / 0.4549) * 60.0 * std::sqrt(12.0 / (15.0 * 224.0));
  CHECK(rate_of(made, heat()).worst->standard_error == close_to(closed, 1e-12));
}
