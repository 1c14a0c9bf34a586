// SPDX-License-Identifier: GPL-3.0-or-later
// Where a stage's rates are evaluated on a channel. Times are worked by hand from the corners of the courses.
#include "core/measure/rates/rate_parts.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/found_holds.h"
#include "tests/core/measure/rates/ramp_between.h"

using namespace soakwright;

namespace {

const char* const kHeatHoldCool =
    "[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = 600\n"
    "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\ncount = \"accumulated\"\n"
    "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 600\n";

const char* end_name(RatePart::End end) {
  return end == RatePart::End::above ? "above" : end == RatePart::End::below ? "below" : "other";
}

/// "1680..2880 above other, after 6000..6600 other other" of the first channel.
std::string parts(const FoundHolds& found, std::size_t stage, double in_range_min_s = 120.0,
                  std::optional<RampStage> other = {}) {
  const RampStage ramp = other.value_or(std::get<RampStage>(found.procedure.stages[stage].specified));
  const StageTime when = stage_time(found.holds, found.procedure.stages, stage, ramp.direction, found.time());
  std::string text;
  for (const RatePart& part :
       rate_parts(found.set, found.group, 0, found.holds, when, ramp, in_range_min_s)) {
    if (!text.empty()) text += ", ";
    if (part.beside_hold) text += "beside ";
    text += say(part.time);
    text += ' ';
    text += end_name(part.starts_at);
    text += ' ';
    text += end_name(part.ends_at);
  }
  return text;
}

/// 10 K a minute from 20 to 550 (53 min), level to 83 min, 10 K a minute down to 50 (133 min): in the range
/// from 2,880 to 5,280 s; 300 at 1,680 and 6,480 s.
const Knots kSoak = {{0, 20}, {53, 550}, {83, 550}, {133, 50}};

}  // namespace

TEST_CASE("In a hold period a rate is evaluated only where the channel is outside that hold's range") {
  const FoundHolds found(along(kSoak), kHeatHoldCool);
  REQUIRE(say(found.holds[0].period) == "2880..5280");
  // The heat stage lasts to the end of the hold period; within it the channel is in the range throughout.
  CHECK(parts(found, 0) == "1680..2880 above other, beside 5280..6480 other above");
  CHECK(parts(found, 2) == "beside 1680..2880 above other, 5280..6480 other above");
}

TEST_CASE("An excursion within the hold period is a part of its own") {
  // Down to 400 and up again from 83 to 113 min: below 500 from 88 to 108 min.
  const FoundHolds found(along({{0, 20}, {53, 550}, {83, 550}, {98, 400}, {113, 550}, {143, 550}, {193, 50}}),
                         kHeatHoldCool);
  REQUIRE(say(found.holds[0].period) == "2880..8880");
  CHECK(parts(found, 0) == "1680..2880 above other, 5280..6480 other other, beside 8880..10080 other above");
}

TEST_CASE("Parts no further apart than in_range_min are one, control within the range included") {
  // Below 500 from 88 to 92 min, in it for 2 min at 510 and less, below it again from 94 to 98 min.
  const Knots twice = {{0, 20},   {53, 550}, {83, 550}, {90, 480},  {92, 500},  {93, 510},
                       {94, 500}, {96, 480}, {98, 500}, {103, 550}, {143, 550}, {193, 50}};
  const FoundHolds found(along(twice), kHeatHoldCool);
  REQUIRE(say(found.holds[0].period) == "2880..8880");
  // 550 at 83 min, 480 at 90 min: 500 at 88 min.
  CHECK(parts(found, 0, 120) ==
        "1680..2880 above other, 5280..5880 other other, beside 8880..10080 other above");
  CHECK(parts(found, 0, 119) ==
        "1680..2880 above other, 5280..5520 other other, 5640..5880 other other, beside 8880..10080 other "
        "above");
}

TEST_CASE("Noise about a limit makes no parts of its own, unknown time between two does") {
  // Above 300 from 28 to 29 min (310), below to 30.5 min (a crossing at 30.5), above from there on.
  const Knots flicker = {{0, 20},     {28, 300},   {28.5, 305}, {29, 300},
                         {29.5, 290}, {30.5, 310}, {58, 585},   {60, 585}};
  MadeRecord made = MadeRecord::every(10, 361).course("TC1", flicker);
  const FoundHolds found(made, kHeatHoldCool);
  CHECK(parts(found, 0, 120).find("1680.") == 0);
  // 1,740 to 1,800 s below: apart by 60 s.
  CHECK(parts(found, 0, 60).find("1680..2970 above other") == 0);
  CHECK(parts(found, 0, 59).find("1680..1740 above above, 1800..2970 above other") == 0);
  // A clock fault between them: nothing joins the two.
  const FoundHolds broken(made.broken_after(177), kHeatHoldCool);
  CHECK(parts(broken, 0, 120).find("1680..1740 above above, 1800..") == 0);
}

TEST_CASE("A touch of no length is no part") {
  // Up to exactly 300 at 28 min and down again, then a climb into the hold.
  const FoundHolds found(along({{0, 20}, {28, 300}, {38, 200}, {78, 550}, {98, 550}, {140, 130}}),
                         kHeatHoldCool);
  CHECK(parts(found, 0, 1).find("2966") == std::string::npos);
  CHECK(parts(found, 0, 1).find("1680") == std::string::npos);
}

TEST_CASE("A part that runs from `above` to `below` or back is told from one that turns round") {
  const RampStage heat = ramp_between(RampStage::Direction::heat, 300, 400);
  const FoundHolds found(along(kSoak), kHeatHoldCool);
  // 300 at 28 min, 400 at 38 min; down 400 at 98 min, 300 at 108 min.
  CHECK(parts(found, 0, 120, heat) == "1680..2280 above below, beside 5880..6480 below above");
  const FoundHolds turns(along({{0, 20}, {33, 350}, {43, 250}, {73, 550}, {93, 550}, {143, 50}}),
                         kHeatHoldCool);
  // 300 at 28 min, 300 again at 38 min; 300 at 48 min, 400 at 58 min.
  CHECK(parts(turns, 0, 120, heat).find("1680..2280 above above, 2880..3480 above below") == 0);
}

TEST_CASE("After the hold a heat stage reaches to the record's end, or to the next heat stage") {
  const char* const two =
      "[[stage]]\nkind = \"heat\"\nabove = 50\nrate_max = 600\n"
      "[[stage]]\nkind = \"hold\"\nlow = 100\nhigh = 200\ntime_min = \"1 min\"\n"
      "[[stage]]\nkind = \"heat\"\nabove = 250\nrate_max = 600\n"
      "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\n"
      "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 600\n";
  // In 100…200 from 8 to 38 min, in 500…600 from 68 to 108 min.
  const FoundHolds found(along({{0, 20}, {13, 150}, {33, 150}, {73, 550}, {103, 550}, {153, 50}}), two);
  const auto beside = [&](std::size_t stage, RampStage::Direction direction) {
    const StageTime when = stage_time(found.holds, found.procedure.stages, stage, direction, found.time());
    return when.beside_hold ? say(when.beside_hold->time) : std::string("none");
  };
  // The next heat stage begins where the first hold period ends: nothing is left between.
  CHECK(beside(0, RampStage::Direction::heat) == "none");
  CHECK(beside(2, RampStage::Direction::heat) == "6480..9180");
  // No cool stage before: back to the record's start.
  CHECK(beside(4, RampStage::Direction::cool) == "0..4080");
  // A heat stage between this one and the hold: the other has the time after the hold.
  const FoundHolds pair(
      along(kSoak),
      std::string("[[stage]]\nkind = \"heat\"\nabove = 300\nbelow = 400\nrate_max = 600\n") + kHeatHoldCool);
  const StageTime first =
      stage_time(pair.holds, pair.procedure.stages, 0, RampStage::Direction::heat, pair.time());
  CHECK_FALSE(first.beside_hold);
  const StageTime second =
      stage_time(pair.holds, pair.procedure.stages, 1, RampStage::Direction::heat, pair.time());
  CHECK(say(second.beside_hold->time) == "5280..7980");
}

TEST_CASE("Before the hold a cool stage reaches back to the previous cool stage") {
  const char* const two =
      "[[stage]]\nkind = \"hold\"\nlow = 100\nhigh = 200\ntime_min = \"1 min\"\n"
      "[[stage]]\nkind = \"cool\"\nabove = 50\nrate_max = 600\n"
      "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\n"
      "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 600\n"
      "[[stage]]\nkind = \"cool\"\nabove = 100\nbelow = 300\nrate_max = 600\n";
  const FoundHolds found(along({{0, 20}, {13, 150}, {33, 150}, {73, 550}, {103, 550}, {153, 50}}), two);
  const auto when = [&](std::size_t stage) {
    return stage_time(found.holds, found.procedure.stages, stage, RampStage::Direction::cool, found.time());
  };
  REQUIRE(say(when(1).time) == "480..4080");
  CHECK_FALSE(when(3).beside_hold);  // from 4,080 to 4,080 s
  CHECK(say(when(1).beside_hold->time) == "0..480");
  CHECK_FALSE(when(4).beside_hold);  // the first cool stage after the hold has it
}

TEST_CASE("A record that begins hot has an earlier cooling in it, up to the first rise through `above`") {
  // From 400 down to 200 (20 min), then up: 300 at 38 min, 500 at 68 min.
  const FoundHolds hot(along({{0, 400}, {20, 200}, {73, 550}, {103, 550}, {153, 50}}), kHeatHoldCool);
  const std::string told = parts(hot, 2);
  CHECK(told.find("beside 0..") == std::string::npos);
  CHECK(told.find("beside 2108") == 0);  // 200 at 1,200 s, 350 K in 3,180 s: 300 at 1,200 + 908.6 s
  // One that begins hot and never falls below 300 has no such rise: all of it counts.
  const FoundHolds never(along({{0, 400}, {10, 320}, {73, 550}, {103, 550}, {153, 50}}), kHeatHoldCool);
  CHECK(parts(never, 2).find("beside 0..") == 0);
}
