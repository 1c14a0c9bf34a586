// SPDX-License-Identifier: GPL-3.0-or-later
// Mean rates from crossing to crossing.
#include "core/measure/rates/overall_rate.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/found_holds.h"

using namespace soakwright;

namespace {

const char* const kHeatHoldCool =
    "[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = 600\n"
    "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\n"
    "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 600\n";

RampStage ramp_of(const FoundHolds& found, std::size_t stage) {
  return std::get<RampStage>(found.procedure.stages[stage].specified);
}

/// "TC1 600 1680..2880" for every channel.
std::string overall(const FoundHolds& found, std::size_t stage, std::optional<RampStage> specified = {}) {
  const RampStage ramp = specified.value_or(ramp_of(found, stage));
  const StageTime when = stage_time(found.holds, found.procedure.stages, stage, ramp.direction, found.time());
  std::string text;
  for (const OverallRate& rate : overall_rates(found.set, found.group, when, ramp, 240.0)) {
    if (!text.empty()) text += ", ";
    text += found.set.traces[rate.trace].name;
    text += ' ';
    if (!rate.mean) {
      text += "none";
      continue;
    }
    text += say(rate.mean->rate_c_per_h);
    text += ' ';
    text += say(Span{rate.mean->from_s, rate.mean->to_s});
  }
  return text;
}

/// 10 K a minute from 20 up to 550 (53 min), level to 83 min, 5 K a minute down to 50 (183 min).
const Knots kSoak = {{0, 20}, {53, 550}, {83, 550}, {183, 50}};

}  // namespace

TEST_CASE("The overall rate runs from `above` to the hold's `low`, and back") {
  const FoundHolds found(along(kSoak), kHeatHoldCool);
  // 300 at 28 min, 500 at 48 min: 200 K in 20 min. Down: 500 at 93 min, 300 at 133 min.
  CHECK(overall(found, 0) == "TC1 600 1680..2880");
  CHECK(overall(found, 2) == "TC1 300 5580..7980");
}

TEST_CASE("The last rise through `above` before the core counts, and the first into the hold after it") {
  // Up to 400 and back to 200, then 5 K a minute: 300 at 78 min, 500 at 118 min, a dip to 490, 500 again.
  const FoundHolds found(along({{0, 20},
                                {38, 400},
                                {58, 200},
                                {118, 500},
                                {120, 510},
                                {124, 490},
                                {128, 510},
                                {168, 510},
                                {200, 40}}),
                         kHeatHoldCool);
  REQUIRE(say(found.holds[0].continuous->first) == say(126.0 * 60));
  CHECK(overall(found, 0) == "TC1 300 4680..7080");
}

TEST_CASE("The last fall through `low` and the first through `above` after the span count") {
  // 510 until 100 min, a dip to 490 and back, 500 left at 110 min; 300 first at 150 min, then up and down
  // again.
  const FoundHolds found(along({{0, 20},
                                {49, 510},
                                {100, 510},
                                {102, 490},
                                {104, 510},
                                {108, 510},
                                {110, 500},
                                {150, 300},
                                {152, 290},
                                {156, 310},
                                {170, 240}}),
                         kHeatHoldCool);
  CHECK(overall(found, 2) == "TC1 300 6600..9000");
}

TEST_CASE("Without `above` the overall rate runs from or to the stage's end") {
  const FoundHolds found(along(kSoak), kHeatHoldCool);
  RampStage heat = ramp_of(found, 0);
  heat.above.reset();
  CHECK(overall(found, 0, heat) == "TC1 600 0..2880");  // 20 to 500
  RampStage cool = ramp_of(found, 2);
  cool.above.reset();
  CHECK(overall(found, 2, cool) == "TC1 300 5580..10980");  // 500 to 50
}

TEST_CASE("Each channel has its own overall rate, null where the record does not show both ends") {
  MadeRecord made = along(kSoak);
  made.course("TC2", {{0, 100}, {90, 550}, {136, 550}, {183, 80}})    // 5 K a minute, 10 K a minute down
      .course("TC3", {{0, 310}, {24, 550}, {150, 550}, {183, 310}});  // never below 300
  const FoundHolds found(made, kHeatHoldCool);
  REQUIRE(say(found.holds[0].continuous) == "4800..5580");  // TC2 comes at 80 min, TC1 leaves at 93 min
  CHECK(overall(found, 0) == "TC1 600 1680..2880, TC2 300 2400..4800, TC3 none");
  CHECK(overall(found, 2) == "TC1 300 5580..7980, TC2 600 8460..9660, TC3 none");
}

TEST_CASE("Without a hold beside the stage there is no overall rate") {
  Knots cold = kSoak;
  for (auto& [minute, celsius] : cold) celsius -= 100;
  const FoundHolds found(along(cold), kHeatHoldCool);
  CHECK(overall(found, 0) == "TC1 none");
  CHECK(overall(found, 2) == "TC1 none");
}

TEST_CASE("Across a take-over there is no overall rate") {
  MadeRecord made = along(kSoak);
  made.course("TC9", kSoak).spare("TC9", "TC1");
  SECTION("on the way up") {
    made.missing("TC1", 40 * 60, 9999999);
    const FoundHolds found(made, kHeatHoldCool);
    CHECK(overall(found, 0) == "TC1 none");
    CHECK(overall(found, 2) == "TC1 300 5580..7980");
  }
  SECTION("in the hold it is no matter") {
    made.missing("TC1", 60 * 60, 9999999);
    const FoundHolds found(made, kHeatHoldCool);
    CHECK(overall(found, 0) == "TC1 600 1680..2880");
    CHECK(overall(found, 2) == "TC1 300 5580..7980");
  }
}

TEST_CASE("A crossing hidden in a hole is none") {
  MadeRecord made = along(kSoak);
  made.missing("TC1", 26 * 60, 30 * 60);  // 300 is passed at 28 min
  CHECK(overall(FoundHolds(made, kHeatHoldCool), 0) == "TC1 none");
}

// ---- crossings that last ----

TEST_CASE("A spike through `low` or back through `above` makes no lasting crossing") {
  // Rows a minute apart; 300 at 28 min, 500 at 48 min: 600 °C/h.
  const auto with = [](std::size_t minute, double celsius) {
    std::vector<double> values;
    for (int row = 0; row <= 183; ++row) values.push_back(on_course(kSoak, 60.0 * row));
    values[minute] = celsius;
    return MadeRecord::every(60, values.size()).column("TC1", values);
  };
  const auto lasting = [](const MadeRecord& made, std::size_t stage) {
    const FoundHolds found(made, kHeatHoldCool);
    const RampStage ramp = ramp_of(found, stage);
    const StageTime when =
        stage_time(found.holds, found.procedure.stages, stage, ramp.direction, found.time());
    const OverallRate rate = overall_rates(found.set, found.group, when, ramp, 240.0).front();
    return rate.lasting ? say(Span{rate.lasting->from_s, rate.lasting->to_s}) : std::string("none");
  };
  CHECK(lasting(with(0, 20), 0) == "1680..2880");
  CHECK(lasting(with(40, 520), 0) == "1680..2880");  // up through 500 at 39 min and back
  CHECK(lasting(with(40, 200), 0) == "1680..2880");  // down through 300 and up again
  CHECK(lasting(with(0, 20), 2) == "5580..7980");
  CHECK(lasting(with(110, 200), 2) == "5580..7980");  // down through 300 on the way down, and back
  CHECK(lasting(with(110, 520), 2) == "5580..7980");  // up through 500 and back
  // One spike beside a crossing would move it by up to a minute.
  CHECK(lasting(with(48, 560), 0) == "1680..2880");
  CHECK(lasting(with(47, 530), 0) == "1680..2880");
  CHECK(lasting(with(28, 250), 0) == "1680..2880");
  CHECK(lasting(with(93, 560), 2) == "5580..7980");
  CHECK(lasting(with(133, 250), 2) == "5580..7980");
  // What is measured is measured with it.
  CHECK(overall(FoundHolds(with(40, 520), kHeatHoldCool), 0).find("TC1 600 ") == std::string::npos);
}

TEST_CASE(
    "A ramp that ends below the hold's range ends there, and one after another hold begins with the stage") {
  const FoundHolds found(along(kSoak), kHeatHoldCool);
  RampStage heat = ramp_of(found, 0);
  heat.below = Temperature::of_celsius(420);
  CHECK(overall(found, 0, heat) == "TC1 600 1680..2400");  // 300 to 420
  RampStage cool = ramp_of(found, 2);
  cool.below = Temperature::of_celsius(420);
  CHECK(overall(found, 2, cool) == "TC1 300 6540..7980");  // 420 at 109 min
  // 350 held before it: 300 was crossed on the way to that hold.
  const FoundHolds two(along({{0, 20}, {33, 350}, {93, 350}, {113, 550}, {143, 550}, {193, 50}}),
                       "[[stage]]\nkind = \"hold\"\nlow = 340\nhigh = 360\ntime_min = \"1 min\"\n" +
                           std::string(kHeatHoldCool));
  REQUIRE(say(two.holds[0].period) == "1920..5640");
  // 360 at 94 min (5,640 s) to 500 at 108 min.
  CHECK(overall(two, 1) == "TC1 600 5640..6480");
}
