// SPDX-License-Identifier: GPL-3.0-or-later
// Temperatures of a hold as requirements: excursions out of the range, over it, and the heated band's edge.
#include <string>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/hold_records.h"

using namespace soakwright;

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
