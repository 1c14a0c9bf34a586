// SPDX-License-Identifier: GPL-3.0-or-later
// The end of a ramp where one reading beside it is a spike: crossings worked out by hand.
#include "core/measure/rates/crossing_without_spike.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

constexpr double kLevel_c = 125.0;

/// Readings of a ramp of 10 °C a minute, but for what the case changes; the ramp ends above the level.
struct Ramp {
  const char* what;
  std::vector<double> readings;
  double crossed_s;   ///< by the line through the readings on either side
  double expected_s;  ///< at 150 s, a straight ramp crosses the level
};

const std::vector<Ramp> kRamps = {
    {"straight", {100, 110, 120, 130, 140}, 150.0, 150.0},
    // 120 + 60 * 5 / 30; without it 110, 120 and 140 go on at 10 °C a minute.
    {"the reading beyond is too high", {100, 110, 120, 150, 140}, 130.0, 150.0},
    // 120 + 60 * 5 / 6 lies farther outward than 150 s: the ramp is never made shorter.
    {"the reading beyond is too low", {100, 110, 120, 126, 140}, 170.0, 170.0},
    // 120 + 60 * 1 / 6; without it 100, 110 and 130 go on at 10 °C a minute.
    {"the reading before is too high", {100, 110, 124, 130, 140}, 130.0, 150.0},
};

}  // namespace

TEST_CASE("An end of a ramp is where it is crossed without a spike beside it, if that is farther outward") {
  for (const Ramp& ramp : kRamps) {
    CAPTURE(ramp.what);
    const Traced made(MadeRecord::every(60, 5).column("TC1", ramp.readings));
    CHECK(crossing_without_spike(made.trace("TC1"), ramp.crossed_s, kLevel_c, Outward::later) ==
          close_to(ramp.expected_s));
  }
}

TEST_CASE("The begin of a ramp is treated as its end, time reversed") {
  for (const Ramp& ramp : kRamps) {
    CAPTURE(ramp.what);
    const std::vector<double> reversed(ramp.readings.rbegin(), ramp.readings.rend());
    const Traced made(MadeRecord::every(60, 5).column("TC1", reversed));
    CHECK(crossing_without_spike(made.trace("TC1"), 240.0 - ramp.crossed_s, kLevel_c, Outward::earlier) ==
          close_to(240.0 - ramp.expected_s));
  }
}

TEST_CASE("The readings beside a crossing are those of its own unbroken time") {
  // A level time, a gap, and the ramp with its spike: nothing of the level time counts.
  const Traced made(MadeRecord({0, 60, 120, 1000, 1060, 1120, 1180, 1240})
                        .column("TC1", {100, 100, 100, 100, 110, 120, 150, 140}));
  REQUIRE(made.trace("TC1").pieces.size() == 2);
  CHECK(crossing_without_spike(made.trace("TC1"), 1130.0, kLevel_c, Outward::later) == close_to(1150.0));
  // In no piece: as it is.
  CHECK(crossing_without_spike(made.trace("TC1"), 500.0, kLevel_c, Outward::later) == 500.0);
}
