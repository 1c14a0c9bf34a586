// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/trace_thinning.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"

using namespace soakwright;
using namespace soakwright::pdf;

namespace {

/// One channel with the readings given, 10 s apart; NaN where there is none.
Chart chart_of(std::vector<double> celsius, double interpolate_max_s) {
  auto record = std::make_shared<Record>();
  for (std::size_t i = 0; i < celsius.size(); ++i) record->times_s.push_back(10.0 * static_cast<double>(i));
  record->interval_s = 10.0;
  Channel channel;
  channel.name = "TC1";
  channel.readings = Readings::of_celsius(std::move(celsius), 0.1);
  record->channels.push_back(channel);
  Chart chart;
  chart.record = record;
  chart.end_s = record->times_s.back();
  chart.interpolate_max_s = interpolate_max_s;
  chart.traces.push_back({0, "1", "TC1", "TC1", ChartTrace::Role::evaluated, record->channels[0].readings});
  return chart;
}

Thinning all_of(const Chart& chart, double column_s, double tolerance_k) {
  return {chart.begin_s, chart.end_s, column_s, tolerance_k};
}

}  // namespace

TEST_CASE("a thinned trace keeps the ends and every extreme of its columns") {
  std::vector<double> celsius;
  for (int i = 0; i < 1000; ++i)
    celsius.push_back(100.0 + 0.01 * i + (i == 537 ? 50.0 : 0.0) - (i == 538 ? 30.0 : 0.0));
  const Chart chart = chart_of(celsius, 30.0);
  const auto pieces = thinned(chart, 0, all_of(chart, 500.0, 0.0));
  REQUIRE(pieces.size() == 1);
  const auto& points = pieces[0].points;
  CHECK(points.size() < 90);
  CHECK(points.front().at_s == 0.0);
  CHECK(points.back().at_s == 9990.0);
  const auto [low, high] =
      std::minmax_element(points.begin(), points.end(),
                          [](const TracePoint& a, const TracePoint& b) { return a.celsius < b.celsius; });
  CHECK(low->celsius == Approx(75.38));
  CHECK(high->celsius == Approx(155.37));
  for (std::size_t i = 1; i < points.size(); ++i) CHECK(points[i].at_s > points[i - 1].at_s);
}

TEST_CASE("a straight run needs two points, and no point strays from the line by more than the tolerance") {
  std::vector<double> celsius;
  for (int i = 0; i < 500; ++i) celsius.push_back(20.0 + 0.3 * i);
  const Chart straight = chart_of(celsius, 30.0);
  const auto two = thinned(straight, 0, all_of(straight, 1.0, 0.001));
  REQUIRE(two.size() == 1);
  CHECK(two[0].points.size() == 2);

  SmallNoise noise(5);
  for (double& value : celsius) value += 2.0 * noise();
  const Chart rough = chart_of(celsius, 30.0);
  constexpr double kTolerance_k = 0.8;
  const auto kept = thinned(rough, 0, all_of(rough, 1.0, kTolerance_k));
  REQUIRE(kept.size() == 1);
  const auto& points = kept[0].points;
  CHECK(points.size() < celsius.size());
  std::size_t right = 1;
  double worst = 0.0;
  for (std::size_t i = 0; i < celsius.size(); ++i) {
    const double at_s = 10.0 * static_cast<double>(i);
    while (points[right].at_s < at_s) ++right;
    const TracePoint& a = points[right - 1];
    const TracePoint& b = points[right];
    const double on_line = a.celsius + (b.celsius - a.celsius) * (at_s - a.at_s) / (b.at_s - a.at_s);
    worst = std::max(worst, std::fabs(celsius[i] - on_line));
  }
  CHECK(worst <= kTolerance_k + 1e-9);
}

TEST_CASE(
    "a trace is broken where its readings are further apart than the interpolate_max, and at a clock fault") {
  std::vector<double> celsius(100, 50.0);
  for (std::size_t i = 40; i < 46; ++i) celsius[i] = std::nan("");
  CHECK(thinned(chart_of(celsius, 60.0), 0, {0.0, 990.0, 1.0, 0.0}).size() == 2);
  CHECK(thinned(chart_of(celsius, 70.0), 0, {0.0, 990.0, 1.0, 0.0}).size() == 1);

  Chart faulty = chart_of(celsius, 70.0);
  auto record = std::make_shared<Record>(*faulty.record);
  record->breaks = {70};
  faulty.record = record;
  const auto pieces = thinned(faulty, 0, {0.0, 990.0, 1.0, 0.0});
  REQUIRE(pieces.size() == 2);
  CHECK(pieces[0].points.back().at_s == 700.0);
  CHECK(pieces[1].points.front().at_s == 710.0);
}

TEST_CASE("what was excluded is a piece of its own") {
  Chart chart = chart_of(std::vector<double>(100, 50.0), 30.0);
  chart.exclusions.push_back({0, 200.0, 400.0});
  const auto pieces = thinned(chart, 0, {0.0, 990.0, 1.0, 0.0});
  REQUIRE(pieces.size() == 3);
  CHECK_FALSE(pieces[0].exclusion);
  CHECK(pieces[1].exclusion);
  CHECK(pieces[1].points.front().at_s == 200.0);
  CHECK(pieces[1].points.back().at_s == 400.0);
  CHECK_FALSE(pieces[2].exclusion);
}
