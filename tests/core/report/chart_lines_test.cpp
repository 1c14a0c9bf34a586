// SPDX-License-Identifier: GPL-3.0-or-later
// The ranges and levels that the chart of a report shows.
#include <algorithm>
#include <variant>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"
#include "tests/core/report/report_parts.h"

using namespace soakwright;

TEST_CASE("the chart holds a range where the hold was, and over the whole record where there was none") {
  const Report reached = make_report(made_up_analysis());
  REQUIRE(reached.chart.ranges.size() == 1);
  CHECK(reached.chart.ranges[0].reached);
  CHECK(reached.chart.ranges[0].text == "Stage 2, hold 590 to 620 °C");
  CHECK(reached.chart.ranges[0].from_s > 0.0);
  MadeUpRun run;
  run.spread_k = 80.0;  // never all within 30 °C of each other
  const Report missed = make_report(made_up_analysis(run));
  REQUIRE(missed.chart.ranges.size() == 1);
  CHECK_FALSE(missed.chart.ranges[0].reached);
  CHECK(missed.chart.ranges[0].from_s == 0.0);
  CHECK(missed.chart.ranges[0].to_s == missed.chart.end_s);
}

TEST_CASE("maximum temperatures and levels stand on the chart once") {
  const Report report = make_report(made_up_analysis());
  const auto count = [&](ChartLevel::Kind kind) {
    return std::count_if(report.chart.levels.begin(), report.chart.levels.end(),
                         [kind](const ChartLevel& level) { return level.kind == kind; });
  };
  CHECK(count(ChartLevel::Kind::temperature_max) == 1);
  CHECK(count(ChartLevel::Kind::start_temperature_max) == 1);
  CHECK(count(ChartLevel::Kind::evaluated_above) == 1);
}

TEST_CASE("a level on the chart names the stages whose limit it is") {
  const Analysis analysis = made_up_analysis();
  const Report report = make_report(analysis);
  for (const ChartLevel& level : report.chart.levels) {
    std::vector<std::size_t> expected;
    for (const Stage& stage : analysis.procedure->stages) {
      const auto* ramp = std::get_if<RampStage>(&stage.specified);
      if (ramp == nullptr) continue;
      const auto& limit = level.kind == ChartLevel::Kind::evaluated_below ? ramp->below : ramp->above;
      const bool of_stages =
          level.kind == ChartLevel::Kind::evaluated_above || level.kind == ChartLevel::Kind::evaluated_below;
      if (of_stages && limit && limit->celsius() == level.level_c) expected.push_back(stage.number);
    }
    CHECK(level.stages == expected);
  }
}
