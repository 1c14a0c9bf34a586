// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of a report: each thermocouple's way through the stages, and the procedure's limits.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"
#include "tests/core/report/report_parts.h"

using namespace soakwright;

TEST_CASE("thermocouple tables give each one's way through hold and ramps") {
  const Report report = make_report(made_up_analysis());
  REQUIRE(report.holds.size() == 1);
  REQUIRE(report.holds[0].rows.size() == 4);
  CHECK(report.holds[0].title == "Stage 2, hold 590 to 620 °C");
  REQUIRE(report.rates.size() == 1);
  CHECK(report.rates[0].columns ==
        std::vector<std::string>{"Stage 1, heat: steepest over 15 min", "Stage 1, heat: overall",
                                 "Stage 3, cool: steepest over 15 min", "Stage 3, cool: overall"});
  REQUIRE(report.rates[0].rows.size() == 4);
  const RequirementRow& heating = row_of(report, "stage-1.heating-rate");
  bool steepest_is_there = false;
  for (const RateTable::Row& row : report.rates[0].rows) {
    REQUIRE(row.rates.size() == 4);
    // The steepest over 15 min is never below the mean over the whole ramp by much; the largest of all is the
    // requirement's own figure.
    CHECK(std::stod(row.rates[0]) >= std::stod(row.rates[1]) - 1.0);
    if (row.name == heating.where) steepest_is_there = heating.measured == row.rates[0] + " °C/h";
  }
  CHECK(steepest_is_there);
}

TEST_CASE("the procedure's limits are told with their source, worked out for the thickness") {
  const Report report = make_report(made_up_analysis());
  REQUIRE(report.procedure);
  CHECK(report.procedure->source ==
        "Invented for this test, edition 2031, clause 4.2, from memory, check against your edition");
  REQUIRE(report.procedure->stages.size() == 4);
  CHECK(report.procedure->stages[0].title == "Whole record");
  CHECK(text_of(report.procedure->stages[1].limits, "Heating rate") ==
        "at most 5500 °C/h divided by the thickness in mm, not below 55 °C/h, not above 220 °C/h: 144.7 °C/h "
        "for 38 mm");
  CHECK(text_of(report.procedure->stages[2].limits, "Hold time") == "at least 1 h 35 min, continuous");
}
