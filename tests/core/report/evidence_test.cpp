// SPDX-License-Identifier: GPL-3.0-or-later
// What on the chart proves each requirement and finding.
#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"
#include "tests/core/report/report_parts.h"

using namespace soakwright;

TEST_CASE("a rate's evidence is the fitted line in its window") {
  const Analysis analysis = made_up_analysis();
  const Report report = make_report(analysis);
  const RequirementRow& row = row_of(report, "stage-1.heating-rate");
  const Requirement& requirement = analysis.verdicts->requirements[row.requirement];
  REQUIRE(row.evidence.fit);
  const auto& [from, to] = *row.evidence.fit;
  CHECK(from.at_s == requirement.from_s);
  CHECK(to.at_s == requirement.to_s);
  CHECK((to.level_c - from.level_c) / (to.at_s - from.at_s) * 3600.0 ==
        Approx(*requirement.measured).epsilon(1e-12));
  // Through the middle of the readings: at the window's centre the line is their mean.
  REQUIRE(row.evidence.traces.size() == 1);
  const ChartTrace& trace = report.chart.traces[row.evidence.traces[0]];
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t i = 0; i < analysis.record->rows(); ++i) {
    const double at_s = analysis.record->times_s[i];
    if (at_s < from.at_s - 1e-6 || at_s > to.at_s + 1e-6) continue;
    sum += *trace.readings.celsius(i);
    count += 1.0;
  }
  CHECK(0.5 * (from.level_c + to.level_c) == Approx(sum / count).epsilon(1e-9));
}

TEST_CASE("a spread's evidence is its pair at its moment") {
  const Report report = make_report(made_up_analysis());
  const RequirementRow& row = row_of(report, "stage-2.spread");
  REQUIRE(row.evidence.points.size() == 2);
  CHECK(row.evidence.points[0].at_s == row.evidence.points[1].at_s);
  const double apart = std::fabs(row.evidence.points[0].level_c - row.evidence.points[1].level_c);
  CHECK(row.measured == std::to_string(static_cast<int>(apart)) + "." +
                            std::to_string(static_cast<int>(std::lround(apart * 10.0)) % 10) + " °C");
}

TEST_CASE("a hold's evidence marks the thermocouples that start and stop its clock") {
  const Report report = make_report(made_up_analysis());
  const RequirementRow& row = row_of(report, "stage-2.hold-time");
  REQUIRE(row.evidence.points.size() == 2);
  CHECK(row.evidence.points[0].at_s == Approx(*row.evidence.from_s));
  CHECK(row.evidence.points[1].at_s == Approx(*row.evidence.to_s));
  for (const ChartPoint& point : row.evidence.points) CHECK(point.level_c == Approx(590.0).margin(0.01));
}

TEST_CASE(
    "a take-over is drawn with both thermocouples, and findings are listed in the order of their numbers") {
  MadeUpRun run;
  run.dip = true;
  run.hot = true;
  run.excursion = true;
  Analysis analysis = made_up_analysis(run);
  auto verdicts = std::make_shared<Verdicts>(*analysis.verdicts);
  verdicts->replaced = {{"TC1", "TC4", 3600.0, -1.2}};
  Finding note;
  note.channel = "TC1";
  note.from_s = note.to_s = 3600.0;
  note.what = {state(Sentence::took_over_unseen, std::string{"TC4"}, std::string{"TC1"}, AtMoment{3600.0})};
  verdicts->findings.insert(verdicts->findings.begin(), note);
  analysis.verdicts = verdicts;
  const Report report = make_report(analysis);

  const auto event = std::find_if(report.events.begin(), report.events.end(), [](const EventRow& one) {
    return one.findings == std::vector<std::size_t>{0};
  });
  REQUIRE(event != report.events.end());
  REQUIRE(event->evidence);
  CHECK(event->evidence->traces == std::vector<std::size_t>{0, 3});
  CHECK(event->where == "TC1");

  const std::vector<std::size_t> order = findings_by_number(report);
  REQUIRE(order.size() == report.findings.size());
  REQUIRE(order.size() > 2);
  // A note comes last, though it was found first.
  CHECK(order.back() == 0);
  for (std::size_t i = 1; i < order.size(); ++i)
    CHECK(std::stoi(report.findings[order[i - 1]].tag) <= std::stoi(report.findings[order[i]].tag));
}
