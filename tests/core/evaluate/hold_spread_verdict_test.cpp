// SPDX-License-Identifier: GPL-3.0-or-later
// The spread of a hold as a requirement.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/hold_records.h"

using namespace soakwright;

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
