// SPDX-License-Identifier: GPL-3.0-or-later
// What stands below the temperatures is what was evaluated: the curves lead to the verdict's own figures.
#include "core/report/chart_curves.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/procedure/procedure_file.h"
#include "tests/core/measure/made_record.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

/// Two thermocouples up at 100 and 120 °C/h for an hour, level for an hour.
Analysis ramp() {
  Analysis analysis;
  analysis.record = std::make_shared<const Record>(MadeRecord::every(60.0, 121)
                                                       .course("TC1", {{0, 20}, {60, 120}, {120, 120}}, 3)
                                                       .course("TC2", {{0, 20}, {60, 140}, {120, 140}}, 3)
                                                       .record());
  return analysis;
}

double largest(const Readings& readings) {
  double most = 0.0;
  for (std::size_t row = 0; row < readings.rows(); ++row)
    most = std::max(most, std::fabs(readings.celsius(row).value_or(0.0)));
  return most;
}

}  // namespace

// Worked by hand: on a straight line every least-squares slope is the line's.
TEST_CASE("a rate curve has the slope of the window about each reading, and none at the record's ends") {
  const ChartCurves curves = chart_curves(ramp());
  CHECK(curves.window_s == 900.0);
  REQUIRE(curves.rates.size() == 2);
  CHECK_FALSE(curves.rates[0].celsius(6));
  REQUIRE(curves.rates[0].celsius(8));
  CHECK(*curves.rates[0].celsius(8) == Approx(100.0).epsilon(1e-4));
  CHECK(*curves.rates[1].celsius(30) == Approx(120.0).epsilon(1e-4));
  CHECK(*curves.rates[1].celsius(100) == Approx(0.0).margin(1e-9));
  CHECK_FALSE(curves.rates[0].celsius(120));
  REQUIRE(curves.spreads.size() == 1);
  CHECK(*curves.spreads[0].kelvin.celsius(30) == Approx(10.0).margin(2e-3));
  CHECK(curves.rate_limits.empty());
}

TEST_CASE("spreads are the same without the rates") {
  const Analysis analysis = made_up_analysis();
  const ChartCurves all = chart_curves(analysis);
  const ChartCurves some = chart_curves(analysis, {false, std::nullopt});
  for (const Readings& rate : some.rates) CHECK(rate.rows() == 0);
  REQUIRE(some.spreads.size() == all.spreads.size());
  CHECK(largest(some.spreads[0].kelvin) == largest(all.spreads[0].kelvin));
  CHECK(some.rate_limits.size() == all.rate_limits.size());
}

// Worked by hand: half an hour up at 100 and 120 °C/h from 20 °C they are at 70 and 80 °C.
TEST_CASE("differences are from the channel that was named, and missing where either reading is") {
  Analysis analysis;
  analysis.record = std::make_shared<const Record>(MadeRecord::every(60.0, 61)
                                                       .course("TC1", {{0, 20}, {60, 120}}, 2)
                                                       .course("TC2", {{0, 20}, {60, 140}}, 2)
                                                       .course("TC3", {{0, 20}, {60, 20}}, 0)
                                                       .missing("TC1", 600.0, 600.0)
                                                       .missing("TC3", 1200.0, 1200.0)
                                                       .record());
  const ChartCurves curves = chart_curves(analysis, {false, 1});
  REQUIRE(curves.differences.size() == 3);
  CHECK(curves.differences[0].celsius(30) == -10.0);
  CHECK(curves.differences[1].celsius(30) == 0.0);
  CHECK(curves.differences[2].celsius(30) == -60.0);
  CHECK_FALSE(curves.differences[0].celsius(10));
  CHECK_FALSE(curves.differences[2].celsius(20));
  CHECK(curves.differences[2].celsius(10) == -20.0);
  CHECK(curves.rates[0].rows() == 0);
  CHECK(chart_curves(analysis).differences.empty());
}

TEST_CASE("the largest of a curve is what the requirement measured") {
  const MadeUpRun run;
  const Analysis analysis = made_up_analysis(run);
  const ChartCurves curves = chart_curves(analysis);
  REQUIRE(curves.spreads.size() == 1);
  for (const Requirement& requirement : analysis.verdicts->requirements) {
    if (requirement.id == "stage-2.spread") {
      REQUIRE(requirement.at_s);
      const auto& times = analysis.record->times_s;
      const auto row = static_cast<std::size_t>(
          std::lower_bound(times.begin(), times.end(), *requirement.at_s) - times.begin());
      CHECK(*curves.spreads[0].kelvin.celsius(row) == Approx(*requirement.measured));
    }
    if (requirement.id == "stage-1.heating-rate") {
      double steepest = 0.0;
      for (const Readings& rates : curves.rates) steepest = std::max(steepest, largest(rates));
      CHECK(steepest >= *requirement.measured - 1e-6);
    }
  }
  const auto limit = std::find_if(curves.rate_limits.begin(), curves.rate_limits.end(),
                                  [](const CurveLimit& one) { return one.id == "stage-1.heating-rate"; });
  REQUIRE(limit != curves.rate_limits.end());
  CHECK(limit->value == Approx(5500.0 / 38.0));
  CHECK(limit->from_s < limit->to_s);
  CHECK(std::any_of(curves.rate_limits.begin(), curves.rate_limits.end(),
                    [](const CurveLimit& one) { return one.value < 0.0; }));
  CHECK(curves.spread_limits.size() == 2);
}

// Worked by hand.
TEST_CASE("between two moments each thermocouple has its temperatures, difference, mean and steepest rate") {
  const Analysis analysis = ramp();
  const ChartCurves curves = chart_curves(analysis);
  for (const bool turned : {false, true}) {
    const Between between = turned ? measure_between(analysis, &curves, 5400.0, 1830.0)
                                   : measure_between(analysis, &curves, 1830.0, 5400.0);
    CHECK(between.from_s == 1830.0);
    REQUIRE(between.channels.size() == 2);
    const BetweenChannel& second = between.channels[1];
    CHECK(*second.from_c == Approx(20.0 + 120.0 * 1830.0 / 3600.0).margin(2e-3));
    CHECK(*second.to_c == Approx(140.0).margin(1e-3));
    CHECK(*second.difference_k == Approx(59.0).margin(3e-3));
    CHECK(*second.mean_rate == Approx(59.0 * 3600.0 / 3570.0).margin(5e-3));
    CHECK(*second.steepest_rate == Approx(120.0).epsilon(1e-4));
    CHECK(*between.to_spread_k == Approx(20.0).margin(2e-3));
  }
  // No window fits in.
  CHECK_FALSE(measure_between(analysis, &curves, 1800.0, 2400.0).channels[0].steepest_rate);
  CHECK_FALSE(measure_between(analysis, nullptr, 0.0, 7200.0).channels[0].steepest_rate);
  CHECK_FALSE(measure_between(analysis, nullptr, 600.0, 600.0).channels[0].mean_rate);
}

TEST_CASE("where readings are missing nothing is made up between two moments") {
  Analysis analysis;
  analysis.record = std::make_shared<const Record>(MadeRecord::every(60.0, 121)
                                                       .course("TC1", {{0, 20}, {120, 260}})
                                                       .missing("TC1", 1200.0, 2400.0)
                                                       .record());
  const Between between = measure_between(analysis, nullptr, 1800.0, 3600.0);
  CHECK_FALSE(between.channels[0].from_c);
  CHECK(between.channels[0].to_c);
  CHECK_FALSE(between.channels[0].difference_k);
  CHECK_FALSE(between.from_spread_k);
}
