// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/stage_time.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/found_holds.h"

using namespace soakwright;

namespace {

constexpr auto kHeat = RampStage::Direction::heat;
constexpr auto kCool = RampStage::Direction::cool;

/// Heat, hold 100…200, heat, hold 500…600, cool: stages 0 to 4.
const char* const kTwoHolds =
    "[[stage]]\nkind = \"heat\"\nabove = 50\nrate_max = 600\n"
    "[[stage]]\nkind = \"hold\"\nlow = 100\nhigh = 200\ntime_min = \"1 min\"\n"
    "[[stage]]\nkind = \"heat\"\nabove = 250\nrate_max = 600\n"
    "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\n"
    "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 600\n";

/// 10 K/min: 100 at 8 min; level at 150 from 13 to 33 min; 200 at 38 min; 500 at 68 min, 550 from 73 to
/// 103 min, 500 at 108 min; 50 at 153 min.
const Knots kPreheatAndSoak = {{0, 20}, {13, 150}, {33, 150}, {73, 550}, {103, 550}, {153, 50}};

MadeRecord preheat_and_soak(double celsius_less = 0) {
  Knots knots = kPreheatAndSoak;
  for (auto& [minute, celsius] : knots) celsius -= celsius_less;
  return MadeRecord::every(60, 154).course("TC1", knots);
}

RampStage ramp(RampStage::Direction direction, std::optional<double> above,
               std::optional<double> below = {}) {
  RampStage stage;
  stage.direction = direction;
  if (above) stage.above = Temperature::of_celsius(*above);
  if (below) stage.below = Temperature::of_celsius(*below);
  return stage;
}

/// "TC1 hole 60..120, …" of one stage between or beside holds.
std::string blind(const FoundHolds& found, std::size_t stage, const RampStage& specified) {
  const StageTime when =
      stage_time(found.holds, found.procedure.stages, stage, specified.direction, found.time());
  std::string text;
  for (const BlindSpot& spot : blind_spots(found.set, found.group, found.holds, when, specified)) {
    if (!text.empty()) text += ", ";
    text += found.set.traces[spot.trace].name;
    text += spot.reason == BlindSpot::Reason::starts_above ? " starts above at "
            : spot.reason == BlindSpot::Reason::ends_above ? " ends above at "
                                                           : " hole ";
    text += spot.reason == BlindSpot::Reason::hole ? say(spot.time) : say(spot.celsius);
  }
  return text;
}

const char* const kOneHold =
    "[evaluation]\ninterpolate_max = \"60 s\"\n"
    "[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = 600\n"
    "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\n"
    "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 600\n";

/// 10 K/min from 20 to 550 (53 min), level to 83 min, down to 50 (133 min): in the range from 48 min (2,880
/// s) to 88 min (5,280 s); 300 at 28 and 108 min.
MadeRecord one_soak() {
  return MadeRecord::every(60, 134).course("TC1", {{0, 20}, {53, 550}, {83, 550}, {133, 50}});
}

}  // namespace

TEST_CASE("Heat and cool stages are times, bounded by the spans of the holds beside them") {
  const FoundHolds found(preheat_and_soak(), kTwoHolds);
  REQUIRE(say(found.holds[0].period) == "480..2280");
  REQUIRE(say(found.holds[1].period) == "4080..6480");
  const Span record = found.time();
  // Heat: from the end of the span before (or the record's start) to the end of the span after.
  CHECK(say(stage_time(found.holds, found.procedure.stages, 0, kHeat, record).time) == "0..2280");
  CHECK(say(stage_time(found.holds, found.procedure.stages, 2, kHeat, record).time) == "2280..6480");
  // Cool: from the start of the span before to the start of the span after (or the record's end).
  CHECK(say(stage_time(found.holds, found.procedure.stages, 4, kCool, record).time) == "4080..9180");
  CHECK(say(stage_time(found.holds, found.procedure.stages, 2, kCool, record).time) == "480..4080");
  CHECK(say(stage_time(found.holds, found.procedure.stages, 0, kCool, record).time) == "0..480");
}

TEST_CASE("The spread of a heat or cool stage is evaluated between the spans") {
  const FoundHolds found(preheat_and_soak(), kTwoHolds);
  CHECK(say(stage_time(found.holds, found.procedure.stages, 0, kHeat, found.time()).spread_time) == "0..480");
  CHECK(say(stage_time(found.holds, found.procedure.stages, 2, kHeat, found.time()).spread_time) ==
        "2280..4080");
  CHECK(say(stage_time(found.holds, found.procedure.stages, 4, kCool, found.time()).spread_time) ==
        "6480..9180");
}

TEST_CASE("Holds without a core do not bound a stage") {
  // 60 K colder: the second range is never reached (490 at most).
  const FoundHolds found(preheat_and_soak(60), kTwoHolds);
  REQUIRE(found.holds[0].continuous);
  REQUIRE_FALSE(found.holds[1].continuous);
  const StageTime heat = stage_time(found.holds, found.procedure.stages, 2, kHeat, found.time());
  CHECK(heat.hold_after == nullptr);
  CHECK(heat.hold_before == &found.holds[0]);
  CHECK(heat.time.second == found.time().second);
  CHECK(stage_time(found.holds, found.procedure.stages, 4, kCool, found.time()).time.first ==
        found.holds[0].period->first);
}

// ---- what a stage cannot show ----

TEST_CASE("Nothing is hidden in a record that shows the whole ramp") {
  const FoundHolds found(one_soak(), kOneHold);
  CHECK(blind(found, 0, ramp(kHeat, 300)).empty());
  CHECK(blind(found, 2, ramp(kCool, 300)).empty());
}

TEST_CASE("A record that starts at or above `above` hides what a heat stage did before") {
  const FoundHolds found(one_soak(), kOneHold);  // first reading 20, last 50
  CHECK(blind(found, 0, ramp(kHeat, 20.1)).empty());
  CHECK(blind(found, 0, ramp(kHeat, 20)) == "TC1 starts above at 20");
  CHECK(blind(found, 2, ramp(kCool, 50.1)).empty());
  CHECK(blind(found, 2, ramp(kCool, 50)) == "TC1 ends above at 50");
  // A cool stage does not care how the record starts, nor a heat stage how it ends.
  CHECK(blind(found, 2, ramp(kCool, 50.1)).empty());
  CHECK(blind(found, 0, ramp(kHeat, 20.1)).empty());
}

TEST_CASE("Only the first heat stage begins with the record") {
  const FoundHolds found(preheat_and_soak(), kTwoHolds);
  CHECK(blind(found, 0, ramp(kHeat, 10)) == "TC1 starts above at 20");
  CHECK(blind(found, 2, ramp(kHeat, 10)).empty());
}

TEST_CASE("A late thermocouple hides something only if its first reading is at or above `above`") {
  // Readings from 10 min (120 °C) and from 30 min (320 °C) on.
  CHECK(blind(FoundHolds(one_soak().missing("TC1", 0, 590), kOneHold), 0, ramp(kHeat, 300)).empty());
  CHECK(blind(FoundHolds(one_soak().missing("TC1", 0, 1790), kOneHold), 0, ramp(kHeat, 300)) ==
        "TC1 starts above at 320");
  // Its last reading at 115 min is 230; at 100 min 380.
  CHECK(blind(FoundHolds(one_soak().missing("TC1", 6910, 9999), kOneHold), 2, ramp(kCool, 300)).empty());
  CHECK(blind(FoundHolds(one_soak().missing("TC1", 6010, 9999), kOneHold), 2, ramp(kCool, 300)) ==
        "TC1 ends above at 380");
}

TEST_CASE("A hole counts unless the readings at both its ends lie on one side outside above…below") {
  struct Case {
    const char* what;
    Span missing;
    RampStage stage;
    const char* expected;
  };
  // 10 K/min: at minute m the work is at 20 + 10 m. Empty from 20 min 10 s to 26 min 50 s: no line from
  // 20 min (220) to 27 min (290).
  const std::vector<Case> cases = {
      {"below `above` at both ends", {1210, 1610}, ramp(kHeat, 300), ""},
      {"across `above`", {1210, 1690}, ramp(kHeat, 300), "TC1 hole 1200..1740"},  // to 29 min, 310
      {"to exactly `above`", {1210, 1630}, ramp(kHeat, 300), "TC1 hole 1200..1680"},
      {"within the range", {1810, 2170}, ramp(kHeat, 300), "TC1 hole 1800..2220"},
      {"above `below` at both ends", {1810, 2170}, ramp(kHeat, 200, 310), ""},  // 320 and 390
      {"one end below `above`, one above `below`", {610, 2170}, ramp(kHeat, 200, 310), "TC1 hole 600..2220"},
      {"no `above`: every hole counts", {1210, 1610}, ramp(kHeat, {}), "TC1 hole 1200..1620"},
      {"within the hold's span", {3610, 4010}, ramp(kHeat, 300), ""},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const FoundHolds found(one_soak().missing("TC1", c.missing.first, c.missing.second), kOneHold);
    CHECK(blind(found, 0, c.stage) == c.expected);
  }
}

TEST_CASE("What was excluded hides nothing") {
  MadeRecord two = one_soak().course("TC2", {{0, 20}, {53, 550}, {83, 550}, {133, 50}});
  CHECK(blind(FoundHolds(two.exclusion("TC2", 1700, 2000), kOneHold), 0, ramp(kHeat, 300)).empty());
}

TEST_CASE("Each channel's hole is a blind spot of its own") {
  const MadeRecord made = one_soak()
                              .course("TC2", {{0, 20}, {53, 550}, {83, 550}, {133, 50}})
                              .missing("TC1", 1810, 1990)
                              .missing("TC2", 2110, 2290);
  CHECK(blind(FoundHolds(made, kOneHold), 0, ramp(kHeat, 300)) == "TC1 hole 1800..2040, TC2 hole 2100..2340");
}
