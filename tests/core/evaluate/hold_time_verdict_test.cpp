// SPDX-License-Identifier: GPL-3.0-or-later
// The time of a hold as a requirement: at least, and at most.
#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/hold_records.h"

using namespace soakwright;

TEST_CASE("Enough certain is met, not enough possible is not met, else the hold time is inconclusive") {
  struct Case {
    const char* what;
    const char* time_min;
    Span missing;
    const char* expected;
  };
  // The hold lasts 4,400 s. Without the rows from 80 to 89 min: 79…90 min is unknown; certain are the 2,200 s
  // after 90 min, possible all 4,400 s.
  const std::vector<Case> cases = {
      {"as long as required", "4400 s", {-1, -1}, "4400 met"},
      {"within the slack of a thousandth of a second", "4400.0009 s", {-1, -1}, "4400 met"},
      {"a second too short", "4401 s", {-1, -1}, "4400 not met"},
      {"a hole, and enough beside it", "2200 s", {4800, 5340}, "2200 met"},
      {"a hole that could hold it", "4400 s", {4800, 5340}, "2200 inconclusive"},
      {"not even with the hole", "4401 s", {4800, 5340}, "2200 not met"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    MadeRecord made = plain_record();
    if (c.missing.first >= 0) made.missing("TC1", c.missing.first, c.missing.second);
    const Evaluated evaluated(
        made, kLinesOfAMinute + hold_500_600_with("time_min = \"" + std::string(c.time_min) + "\""));
    CHECK(evaluated.told("stage-1.hold-time") == c.expected);
    CHECK(evaluated["stage-1.hold-time"].certain_s == evaluated["stage-1.hold-time"].measured);
    // A hole in the hold hides how hot it was.
    const Verdict over = c.missing.first >= 0 ? Verdict::inconclusive : Verdict::met;
    CHECK(evaluated["stage-1.over-temperature"].verdict == over);
    CHECK(evaluated.all.verdict == std::max(over, evaluated["stage-1.hold-time"].verdict));
  }
}

TEST_CASE("The hold time tells core, certain, possible and margin") {
  const Evaluated evaluated(plain_record(), hold_500_600_with("time_min = \"70 min\""));
  const Requirement& time = evaluated["stage-1.hold-time"];
  CHECK(time.limit == 4200);
  CHECK(*time.margin == close_to(200));
  CHECK(*time.certain_s == close_to(4400));
  CHECK(*time.possible_s == close_to(4400));
  CHECK(*time.from_s == close_to(3200));
  CHECK(*time.to_s == close_to(7600));
  const StageCourse& stage = evaluated.stage(1);
  CHECK(say(stage.continuous) == "3200..7600");
  CHECK(say(stage.in_range) == "3200..7600");
  CHECK(*stage.channels[0].in_s == close_to(3200));
  CHECK(*stage.channels[0].out_s == close_to(7600));
  CHECK(*stage.channels[0].max_c == close_to(560));
  // Readings in the span: 54 to 126 min; the lowest two are 506.
  CHECK(*stage.channels[0].min_c == close_to(506));
}

TEST_CASE("A record that ends in the hold is inconclusive and not failed") {
  // It ends at 100 min: 2,800 s of the hold are there.
  const MadeRecord made = MadeRecord::every(60, 101).course("TC1", plain_run());
  const Evaluated open(made, hold_500_600_with("time_min = \"70 min\""));
  CHECK(open.told("stage-1.hold-time") == "2800 inconclusive");
  CHECK_FALSE(open["stage-1.hold-time"].possible_s);
  CHECK(Evaluated(made, hold_500_600_with("time_min = \"46 min\"")).told("stage-1.hold-time") == "2800 met");
}

TEST_CASE("A record that starts in the hold is inconclusive, too") {
  const MadeRecord made = MadeRecord::every(60, 61).course("TC1", {{0, 560}, {30, 560}, {60, 290}});
  CHECK(Evaluated(made, hold_500_600_with("time_min = \"1 h\"")).verdict("stage-1.hold-time") ==
        "inconclusive");
}

TEST_CASE("A hold without a continuous hold names each channel that never came in, with its extreme") {
  const MadeRecord made = MadeRecord::every(60, 61)
                              .course("TC1", {{0, 20}, {30, 490}, {60, 20}})
                              .course("TC2", {{0, 20}, {30, 560}, {60, 20}})
                              .column("TC3", std::vector<double>(61, 700));
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"10 min\""));
  CHECK(evaluated.told("stage-1.hold-time") == "0 not met");
  CHECK(*evaluated["stage-1.hold-time"].possible_s == 0);
  const auto findings = evaluated.findings("stage-1.hold-time");
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].channel == "TC1");
  CHECK(in_unit(*findings[0].extreme, TemperatureUnit::celsius) == close_to(490));
  CHECK(*findings[0].from_s == 1800);
  CHECK(findings[1].channel == "TC3");
  CHECK(in_unit(*findings[1].extreme, TemperatureUnit::celsius) == close_to(700));
}

TEST_CASE("Channels that were in, but never together, have one finding for all") {
  const MadeRecord made = MadeRecord::every(60, 121)
                              .course("TC1", {{0, 20}, {30, 560}, {60, 20}})
                              .course("TC2", {{0, 20}, {60, 20}, {90, 560}, {120, 20}});
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"10 min\""));
  CHECK(evaluated.told("stage-1.hold-time") == "0 not met");
  const auto findings = evaluated.findings("stage-1.hold-time");
  REQUIRE(findings.size() == 1);
  CHECK_FALSE(findings[0].channel);
}

TEST_CASE("Without a continuous hold, unknown time can still leave the hold inconclusive") {
  // Never above 490, but unknown for 11 min (79 to 90).
  const MadeRecord made = MadeRecord::every(60, 181)
                              .course("TC1", {{0, 20}, {60, 490}, {120, 490}, {180, 20}})
                              .missing("TC1", 4800, 5340);
  CHECK(Evaluated(made, kLinesOfAMinute + hold_500_600_with("time_min = \"11 min\""))
            .told("stage-1.hold-time") == "0 inconclusive");
  CHECK(Evaluated(made, kLinesOfAMinute + hold_500_600_with("time_min = \"12 min\""))
            .told("stage-1.hold-time") == "0 not met");
}

TEST_CASE("A time by thickness is limited by the weld's own") {
  const std::string rule = hold_500_600_with(
      "time_min = { points = [[\"6 mm\", \"15 min\"], [\"50 mm\", \"2 h\"]], beyond = \"15 min per "
      "25 mm\" }");
  // 30 mm: 15 min + 24/44 of 105 min; 75 mm: 2 h 15 min.
  CHECK(Evaluated(plain_record(), "thickness = \"30 mm\"\n" + rule)["stage-1.hold-time"].limit ==
        close_to(900 + 6300 * 24.0 / 44.0));
  CHECK(Evaluated(plain_record(), "thickness = \"75 mm\"\n" + rule)["stage-1.hold-time"].limit ==
        close_to(8100));
}

TEST_CASE("time_max is held against the known time that any one channel is at or above the lower edge") {
  // TC2 comes 10 min earlier and leaves 10 min later: 4,400 + 1,200 s.
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 110}, {50, 560}, {130, 560}, {180, 110}});
  const auto evaluated = [&](const char* time_max, const MadeRecord& record) {
    return Evaluated(record,
                     kLinesOfAMinute + hold_500_600_with("time_max = \"" + std::string(time_max) + "\""));
  };
  CHECK(evaluated("5600 s", made).told("stage-1.hold-time-max") == "5600 met");
  CHECK(evaluated("5599 s", made).told("stage-1.hold-time-max") == "5600 not met");
  CHECK(evaluated("5599 s", made)["stage-1.hold-time-max"].channel == "TC2");
  // TC1 unknown for 20 min could have been hot then: 4,400 + 1,200 s.
  CHECK(evaluated("5600 s", MadeRecord(made).missing("TC1", 660, 1740)).told("stage-1.hold-time-max") ==
        "5600 met");
  CHECK(evaluated("5600 s", MadeRecord(made).missing("TC1", 660, 1800)).told("stage-1.hold-time-max") ==
        "5600 inconclusive");  // 21 min
  // Unknown where the record starts, it could have been so before the record, too.
  CHECK(evaluated("5600 s", MadeRecord(made).missing("TC1", 0, 60)).told("stage-1.hold-time-max") ==
        "5600 inconclusive");
}

TEST_CASE("time_max counts time above the range as well") {
  // 10 K a minute: at or above 500 from 48 to 132 min, above 600 from 58 to 122 min.
  const MadeRecord made =
      MadeRecord::every(60, 181).course("TC1", {{0, 20}, {60, 620}, {120, 620}, {180, 20}});
  CHECK(Evaluated(made, hold_500_600_with("time_max = \"84 min\"")).told("stage-1.hold-time-max") ==
        "5040 met");
  CHECK(Evaluated(made, hold_500_600_with("time_max = \"83 min\"")).told("stage-1.hold-time-max") ==
        "5040 not met");
}

TEST_CASE("time_max is inconclusive where the record breaks off in the range") {
  const MadeRecord made = MadeRecord::every(60, 101).course("TC1", plain_run());
  CHECK(Evaluated(made, hold_500_600_with("time_max = \"1 h\"")).verdict("stage-1.hold-time-max") ==
        "inconclusive");
  CHECK(Evaluated(made, hold_500_600_with("time_max = \"46 min\"")).verdict("stage-1.hold-time-max") ==
        "not met");
}

TEST_CASE("time_max looks between the neighbouring hold periods only") {
  // Two soaks of the same range; each is 4,400 s, never both together.
  Knots twice = plain_run();
  for (const auto& [minute, celsius] : plain_run()) twice.emplace_back(minute + 181, celsius);
  const MadeRecord made = MadeRecord::every(60, 362).course("TC1", twice);
  const std::string hold = hold_500_600_with("time_max = \"4400 s\"");
  const std::string heat = "[[stage]]\nkind = \"heat\"\nabove = 100\nrate_max = 600\n";
  const Evaluated evaluated(made, hold + heat + hold);
  CHECK(evaluated.told("stage-1.hold-time-max") == "4400 met");
  CHECK(evaluated.told("stage-3.hold-time-max") == "4400 met");
}
