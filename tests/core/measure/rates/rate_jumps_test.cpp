// SPDX-License-Identifier: GPL-3.0-or-later
// Rises that no window may show. Worked by hand.
#include "core/measure/rates/rate_jumps.h"

#include <random>

#include <catch2/catch.hpp>

#include "tests/core/measure/rates/ramp_between.h"
#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

const RampStage kHeat = ramp_between(RampStage::Direction::heat, {});
const RampStage kCool = ramp_between(RampStage::Direction::cool, {});

/// "60..120 +50" for every jump of the parts of one channel, a row a minute.
std::string jumps(const std::vector<double>& values, const RampStage& stage, double width_s, double bound_k) {
  const Traced made(MadeRecord::every(60, values.size()).column("TC1", values));
  StageTime when;
  when.time = made.time();
  std::string text;
  for (const RatePart& part : rate_parts(made.set, made.group, 0, {}, when, stage, 120.0))
    for (const RateJump& jump : rate_jumps(made.set.traces[0], part, stage, width_s, bound_k)) {
      if (!text.empty()) text += ", ";
      text += say(jump.time);
      text += " +";
      text += say(jump.kelvin);
    }
  return text;
}

}  // namespace

TEST_CASE("A jump is a rise of more than the bound between readings no further apart than the width") {
  const std::vector<double> values = {100, 100, 150, 150, 150};
  CHECK(jumps(values, kHeat, 300, 49.9) == "60..120 +50");
  CHECK(jumps(values, kHeat, 300, 50).empty());  // at the bound is no jump
  CHECK(jumps(values, kCool, 300, 49.9).empty());
  // 40 K in each of two steps: within two minutes 80 K, within one 40.
  const std::vector<double> slower = {100, 100, 140, 180, 180};
  CHECK(jumps(slower, kHeat, 120, 79.9) == "60..180 +80");
  CHECK(jumps(slower, kHeat, 119, 79.9).empty());
  // A fall in a cool stage.
  CHECK(jumps({200, 200, 140, 140}, kCool, 60, 59.9) == "60..120 +60");
}

TEST_CASE(
    "There is a jump where two readings within the width are further apart than the bound, and only there") {
  std::mt19937 random(3);
  for (int trial = 0; trial < 300; ++trial) {
    std::vector<double> values;
    double celsius = 300.0;
    for (int i = 0; i < 120; ++i)
      values.push_back(celsius += static_cast<double>(random() % 5) - 1.0 - static_cast<double>(trial % 3));
    const double width_s = 60.0 * (1 + trial % 17);
    const double bound_k = static_cast<double>(random() % 30);
    bool any = false;
    for (std::size_t i = 0; i < values.size(); ++i)
      for (std::size_t j = i + 1; j < values.size() && 60.0 * static_cast<double>(j - i) <= width_s; ++j)
        any = any || values[j] - values[i] > bound_k;
    INFO("trial " << trial << ", width " << width_s << " s, bound " << bound_k << " K");
    CHECK(jumps(values, kHeat, width_s, bound_k).empty() == !any);
  }
}

TEST_CASE("Of jumps that overlap the largest is told, apart ones each") {
  CHECK(jumps({100, 130, 160, 160, 160, 160, 160, 190, 190}, kHeat, 120, 25) == "0..120 +60, 360..420 +30");
}

TEST_CASE("A part's end counts where the channel crosses a limit there") {
  // From 200 to 400 in one step, then level: 300 is crossed half way, at 90 s.
  const std::vector<double> values = {200, 200, 400, 400, 400};
  CHECK(jumps(values, ramp_between(RampStage::Direction::heat, 300), 300, 99.9) == "90..120 +100");
  CHECK(jumps(values, ramp_between(RampStage::Direction::heat, 300), 300, 100).empty());
  // Up to the crossing of `below` at 350: 50 K from the reading at 300.
  const std::vector<double> through = {300, 300, 400, 400};
  CHECK(jumps(through, ramp_between(RampStage::Direction::heat, 200, 350), 300, 49.9) == "60..90 +50");
  // The way from end to end, with no reading between, does not count.
  CHECK(
      jumps({200, 400, 400, 400, 400}, ramp_between(RampStage::Direction::heat, 250, 350), 300, 10).empty());
}

TEST_CASE("An end that is no crossing does not count") {
  // The stage begins at 90 s, half way up the step.
  const Traced made(MadeRecord::every(60, 5).column("TC1", {200, 200, 400, 400, 400}));
  StageTime when;
  when.time = {90.0, 240.0};
  for (const RatePart& part : rate_parts(made.set, made.group, 0, {}, when, kHeat, 120.0))
    CHECK(rate_jumps(made.set.traces[0], part, kHeat, 300, 10).empty());
}
