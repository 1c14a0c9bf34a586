// SPDX-License-Identifier: GPL-3.0-or-later
// Holds as requirements: time, longest time, excursions, over, spread, edge, tempering.
#include <algorithm>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

const char* const kLinesOfAMinute = "[evaluation]\ninterpolate_max = \"60 s\"\n";

MadeRecord dipping() {
  // Out of the range from 83 to 85 min (4,980 s to 5,100 s), 20 K deep.
  return MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {84, 480}, {88, 560}, {120, 560}, {180, 20}});
}

}  // namespace

// ---- hold time ----

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

// ---- longest time ----

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

// ---- excursions ----

TEST_CASE("Excursions are time out of the range within the hold, a note where no limit is given") {
  SECTION("no limit: a note, and no requirement") {
    const Evaluated evaluated(dipping(), hold_500_600_with("time_min = \"1 min\""));
    CHECK_FALSE(evaluated.has("stage-1.excursion-time"));
    CHECK(evaluated.places("stage-1.excursion-time") == "note TC1 4980..5100");
    CHECK(evaluated.findings("stage-1.excursion-time")[0].extreme == Quantity{Temperature::of_celsius(480)});
  }
  SECTION("at the limit") {
    const Evaluated evaluated(dipping(), hold_500_600_with("excursion_time_max = \"2 min\""));
    CHECK(evaluated.told("stage-1.excursion-time") == "120 met");
    CHECK(evaluated.places("stage-1.excursion-time") == "note TC1 4980..5100");
  }
  SECTION("beyond it") {
    const Evaluated evaluated(dipping(), hold_500_600_with("excursion_time_max = \"1 min\""));
    CHECK(evaluated.told("stage-1.excursion-time") == "120 not met");
    CHECK(evaluated.places("stage-1.excursion-time") == "not met TC1 4980..5100");
  }
  SECTION("one filled by excursion_allowed still counts here") {
    const Evaluated evaluated(dipping(),
                              "[evaluation]\nexcursion_allowed = \"3 min\"\n" +
                                  hold_500_600_with("excursion_time_max = \"0 s\"\ntime_min = \"70 min\""));
    CHECK(evaluated.told("stage-1.hold-time") == "4400 met");
    CHECK(evaluated.told("stage-1.excursion-time") == "120 not met");
  }
  SECTION("unknown time could be one") {
    MadeRecord hole = plain_record();
    hole.missing("TC1", 4800, 5340);
    const Evaluated evaluated(hole, kLinesOfAMinute + hold_500_600_with("excursion_time_max = \"5 min\""));
    CHECK(evaluated.told("stage-1.excursion-time") == "0 inconclusive");  // 11 min are unknown
    CHECK(Evaluated(hole, kLinesOfAMinute + hold_500_600_with("excursion_time_max = \"11 min\""))
              .told("stage-1.excursion-time") == "0 met");
  }
  SECTION("the edges being crossed are not within the hold") {
    CHECK(Evaluated(plain_record(), hold_500_600_with("excursion_time_max = \"0 s\""))
              .told("stage-1.excursion-time") == "0 met");
  }
  SECTION("no hold, nothing to say") {
    const MadeRecord cold = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 400}});
    CHECK(Evaluated(cold, hold_500_600_with("excursion_time_max = \"0 s\"")).told("stage-1.excursion-time") ==
          "none inconclusive");
  }
}

// ---- over ----

TEST_CASE("Over: a thermocouple that overheats while another lags is seen") {
  // TC1 rises 10 K a minute to 610 at 59 min and falls back as fast; TC2 comes in at 80 min only.
  MadeRecord made = MadeRecord::every(60, 181)
                        .course("TC1", {{0, 20}, {59, 610}, {64, 560}, {120, 560}, {180, 20}})
                        .course("TC2", {{0, 20}, {90, 560}, {120, 560}, {180, 20}});
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"10 min\""));
  REQUIRE(say(evaluated.stage(1).continuous) == "4800..7600");
  CHECK(evaluated.told("stage-1.over-temperature") == "610 not met");
  CHECK(evaluated["stage-1.over-temperature"].channel == "TC1");
  CHECK(*evaluated["stage-1.over-temperature"].at_s == 59 * 60);
  CHECK(*evaluated["stage-1.over-temperature"].margin == close_to(-10));
  CHECK(evaluated.places("stage-1.over-temperature") == "not met TC1 3480..3600");  // 600 at 58 and 60 min
}

TEST_CASE("Over: at the edge is met, and a range without an upper edge has none") {
  const MadeRecord made =
      MadeRecord::every(60, 181).course("TC1", {{0, 20}, {60, 600}, {120, 600}, {180, 20}});
  CHECK(Evaluated(made, hold_500_600_with("time_min = \"10 min\"")).told("stage-1.over-temperature") ==
        "600 met");
  CHECK_FALSE(Evaluated(made, "[[stage]]\nkind = \"hold\"\nlow = 500\ntime_min = \"10 min\"\n")
                  .has("stage-1.over-temperature"));
}

TEST_CASE("Over: towards a hotter hold only to this hold's own hold period") {
  // Preheat at 150 from 13 to 33 min, then on to 560: 100…200 is left for good at 38 min.
  const Knots knots = {{0, 20}, {13, 150}, {33, 150}, {73, 550}, {103, 550}, {153, 50}};
  const std::string preheat = "[[stage]]\nkind = \"hold\"\nlow = 100\nhigh = 200\ntime_min = \"10 min\"\n";
  const MadeRecord made = MadeRecord::every(60, 154).course("TC1", knots);
  SECTION("the hotter one comes after") {
    const Evaluated evaluated(made, preheat + hold_500_600_with("time_min = \"10 min\""));
    CHECK(evaluated.told("stage-1.over-temperature") == "200 met");  // the reading at 38 min
    CHECK(evaluated.told("stage-2.over-temperature") == "550 met");
  }
  SECTION("the hotter one comes before: cooling into a lower hold") {
    const Knots down = {{0, 20}, {53, 550}, {83, 550}, {123, 150}, {160, 150}, {180, 20}};
    const Evaluated evaluated(MadeRecord::every(60, 181).course("TC1", down),
                              hold_500_600_with("time_min = \"10 min\"") + preheat);
    CHECK(evaluated.told("stage-2.over-temperature") == "200 met");
  }
  SECTION("a hotter one without a continuous hold does not lend its readings") {
    // The record ends hot: on its way down the work would be in the preheat's range once more.
    const MadeRecord ends_hot = MadeRecord::every(60, 104).course("TC1", knots);
    const Evaluated evaluated(
        ends_hot, preheat + "[[stage]]\nkind = \"hold\"\nlow = 700\nhigh = 720\ntime_min = \"10 min\"\n");
    CHECK(evaluated.told("stage-1.over-temperature") == "200 met");
    CHECK(evaluated.verdict("stage-2.hold-time") == "not met");
  }
  SECTION("without a continuous hold of its own and with a hotter neighbour nobody can tell") {
    const Evaluated evaluated(made,
                              "[[stage]]\nkind = \"hold\"\nlow = 700\nhigh = 720\ntime_min = \"10 min\"\n"
                              "[[stage]]\nkind = \"hold\"\nlow = 800\nhigh = 820\ntime_min = \"10 min\"\n");
    CHECK(evaluated.told("stage-1.over-temperature") == "none inconclusive");
    CHECK(evaluated.told("stage-2.over-temperature") == "550 met");
  }
}

// ---- spread, edge ----

TEST_CASE("The spread of a hold is evaluated over the whole hold period, excursions included") {
  // TC2 is 20 K hotter in the hold; on the way up TC2 lags by far more.
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {66, 580}, {120, 580}, {180, 20}});
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"10 min\"\nspread_max = 20"));
  // TC2 is at 500 after 56 min 34 s. At 60 min TC1 reads 560 and TC2 20 + 560 · 60/66 = 529.1.
  CHECK(evaluated["stage-1.spread"].measured == 30.9);
  CHECK(*evaluated["stage-1.spread"].at_s == 3600);
  CHECK(evaluated.verdict("stage-1.spread") == "not met");
  CHECK(evaluated["stage-1.spread"].channel == "TC1");
  CHECK(evaluated["stage-1.spread"].channel_2 == "TC2");
  // TC1 dips to 480 at 84 min, out of the range from 83 to 85 min, while TC2 stays at 560.
  MadeRecord dips = dipping();
  dips.course("TC2", plain_run());
  const Evaluated dipped(dips, hold_500_600_with("time_min = \"10 min\"\nspread_max = 79.9"));
  CHECK(dipped.told("stage-1.spread") == "80 not met");
  CHECK(*dipped["stage-1.spread"].at_s == 84 * 60);
  CHECK(Evaluated(dips, hold_500_600_with("spread_max = 80")).told("stage-1.spread") == "80 met");
}

TEST_CASE(
    "A channel unknown, not excluded, in the hold period leaves the spread inconclusive unless not met") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 570}, {120, 570}, {180, 20}});
  const auto told = [&](const MadeRecord& record, const char* most) {
    return Evaluated(record, kLinesOfAMinute + hold_500_600_with("spread_max = " + std::string(most)))
        .told("stage-1.spread");
  };
  CHECK(told(made, "10") == "10 met");
  MadeRecord hole = made;
  hole.missing("TC2", 4800, 4860);
  CHECK(told(hole, "10") == "10 inconclusive");
  CHECK(told(hole, "9.9") == "10 not met");
  CHECK(told(MadeRecord(hole).exclusion("TC2", 4800, 4860), "10") == "10 met");
  // Unknown outside the hold period is no matter.
  CHECK(told(MadeRecord(made).missing("TC2", 600, 1200), "10") == "10 met");
}

TEST_CASE("One thermocouple alone has no spread requirement, and a note says so") {
  const Evaluated evaluated(plain_record(), hold_500_600_with("spread_max = 30\ntime_min = \"1 h\""));
  CHECK_FALSE(evaluated.has("stage-1.spread"));
  REQUIRE(evaluated.all.findings.size() == 1);
  CHECK(evaluated.all.findings[0].kind == Finding::Kind::note);
  CHECK_THAT(evaluated.text(evaluated.all.findings[0]), Catch::Contains("only 1 thermocouple"));
  CHECK(evaluated.all.verdict == Verdict::met);
}

TEST_CASE("spread_within of a hold compares only thermocouples that close along the work") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 570}, {120, 570}, {180, 20}})
      .course("TC3", {{0, 20}, {60, 590}, {120, 590}, {180, 20}})
      .at("TC1", 0.0)
      .at("TC2", 1.0)
      .at("TC3", 3.0);
  const std::string job =
      "[[thermocouple]]\ncolumn = \"TC1\"\nposition = \"0 m\"\n"
      "[[thermocouple]]\ncolumn = \"TC2\"\nposition = \"1 m\"\n"
      "[[thermocouple]]\ncolumn = \"TC3\"\nposition = \"3 m\"\n";
  const auto within = [&](const char* length) {
    return Evaluated(
        made, hold_500_600_with("spread_max = 15\nspread_within = \"" + std::string(length) + "\""), job);
  };
  CHECK(within("1 m").verdict("stage-1.spread") == "met");
  CHECK(within("2 m").verdict("stage-1.spread") == "not met");
  CHECK_FALSE(within("0.9 m").has("stage-1.spread"));
  const Evaluated near = within("0.9 m");
  CHECK_THAT(near.text(near.all.findings.back()), Catch::Contains("no two evaluated thermocouples"));
}

TEST_CASE("A spread at its limit is met, in decimals") {
  // 560.3 − 550.2 is 10.1, in doubles a little less or more.
  const MadeRecord made = MadeRecord::every(60, 61)
                              .column("TC1", std::vector<double>(61, 560.3))
                              .column("TC2", std::vector<double>(61, 550.2));
  const Evaluated evaluated(made, hold_500_600_with("spread_max = 10.1"));
  CHECK(evaluated["stage-1.spread"].measured == 10.1);
  CHECK(evaluated["stage-1.spread"].margin == 0.0);
  CHECK(evaluated.verdict("stage-1.spread") == "met");
  CHECK(Evaluated(made, hold_500_600_with("spread_max = 10")).verdict("stage-1.spread") == "not met");
}

TEST_CASE("A spread without a hold is inconclusive, and the reason says that no hold was found") {
  MadeRecord cold = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 400}});
  cold.course("TC2", {{0, 20}, {60, 400}});
  const Evaluated evaluated(cold, hold_500_600_with("spread_max = 30"));
  CHECK(evaluated.told("stage-1.spread") == "none inconclusive");
  CHECK_THAT(evaluated.text("stage-1.spread"), Catch::Contains("No hold was found"));
}

TEST_CASE("The edge of the heated band reaches its share of `low`, in the procedure's unit") {
  // Lowest reading of the edge channel in the hold: 250 °C (482 °F) of 500 °C (932 °F).
  MadeRecord made = plain_record();
  made.course("Rim", {{0, 20}, {53, 250}, {130, 260}, {180, 20}}).at_edge("Rim");
  const Evaluated evaluated(made, hold_500_600_with("edge_fraction_min = 0.5"));
  CHECK(*evaluated["stage-1.edge-temperature"].measured == close_to(250.1 / 500));  // at 54 min
  CHECK(evaluated.verdict("stage-1.edge-temperature") == "met");
  CHECK(Evaluated(made, hold_500_600_with("edge_fraction_min = 0.51")).verdict("stage-1.edge-temperature") ==
        "not met");
  const Evaluated fahrenheit(
      made, "[[stage]]\nkind = \"hold\"\nlow = 932\nhigh = 1112\nedge_fraction_min = 0.52\n", {}, "F");
  CHECK(*fahrenheit["stage-1.edge-temperature"].measured == close_to((250.1 * 1.8 + 32) / 932));
  CHECK(fahrenheit.verdict("stage-1.edge-temperature") == "not met");
  // The edge is not evaluated as the soak zone is.
  CHECK(Evaluated(made, hold_500_600_with("time_min = \"70 min\"")).told("stage-1.hold-time") == "4400 met");
  CHECK(Evaluated(plain_record(), hold_500_600_with("edge_fraction_min = 0.5"))
            .told("stage-1.edge-temperature") == "none inconclusive");
}

// ---- tempering ----

TEST_CASE("Tempering is held against the coldest and the hottest channel") {
  // One hour at 620 and at 600: P = 17.863 and 17.463.
  const MadeRecord made = MadeRecord::every(60, 61)
                              .column("TC1", std::vector<double>(61, 620))
                              .column("TC2", std::vector<double>(61, 600));
  const std::string low = "[[stage]]\nkind = \"hold\"\nlow = 590\n";
  const auto told = [&](const std::string& keys, const std::string& id, const MadeRecord& record) {
    const Evaluated evaluated(record, low + keys + "\n");
    return evaluated.verdict(id) + " " + evaluated[id].channel.value_or("-");
  };
  CHECK(told("tempering_min = 17.46", "stage-1.tempering-min", made) == "met TC2");
  CHECK(told("tempering_min = 17.47", "stage-1.tempering-min", made) == "not met TC2");
  CHECK(told("tempering_max = 17.87", "stage-1.tempering-max", made) == "met TC1");
  CHECK(told("tempering_max = 17.86", "stage-1.tempering-max", made) == "not met TC1");
  // Unknown time can only add: what is too much stays so, what is too little may not have been.
  MadeRecord hole = made;
  hole.missing("TC2", 1800, 2400);
  CHECK(told("tempering_min = 17.46", "stage-1.tempering-min", hole) == "inconclusive TC2");
  CHECK(told("tempering_max = 17.86", "stage-1.tempering-max", hole) == "not met TC1");
  CHECK(told("tempering_max = 17.87", "stage-1.tempering-max", hole) == "inconclusive TC1");
}

TEST_CASE("Tempering is shown of the whole record, at the last hold's lower edge") {
  const MadeRecord made = MadeRecord::every(60, 61)
                              .column("TC1", std::vector<double>(61, 620))
                              .column("TC2", std::vector<double>(61, 600));
  const Evaluated evaluated(made,
                            "[[stage]]\nkind = \"hold\"\nlow = 300\ntime_min = \"1 min\"\n"
                            "[[stage]]\nkind = \"hold\"\nlow = 590\ntempering_min = 1\n",
                            "weld = \"W-1\"\n");
  REQUIRE(evaluated.all.tempering.size() == 2);
  const ChannelTempering& first = evaluated.all.tempering[0];
  CHECK(first.weld == "W-1");
  CHECK(first.channel == "TC1");
  CHECK(*first.parameter == close_to(17.863, 0.0005));
  CHECK(*first.hours_at_c == close_to(590));
  // Equivalent at `low`: log10 t = (893.15/863.15)·20 − 20.
  CHECK(*first.hours == close_to(std::pow(10.0, 893.15 / 863.15 * 20 - 20), 1e-6));
  CHECK_THAT(evaluated.text("stage-2.tempering-min"), Catch::Contains("whole record"));
}
