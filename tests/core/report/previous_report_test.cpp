// SPDX-License-Identifier: GPL-3.0-or-later
// Every record of a job that took several has its chart, thermocouples and file warnings in the report.
#include <catch2/catch.hpp>

#include "core/report/report.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

PreviousRecord previous(int cycle, const std::string& file, const MadeUpRun& run) {
  Analysis alone = made_up_analysis(run);
  auto record = std::make_shared<Record>(*alone.record);
  record->file = file;
  record->clock = RecorderClock::dated(LocalTime::of({2031, 3, 30}, 7, 30, 0).value());
  record->notices.push_back(
      {"gap", 12, 1, std::string{"TC1"}, state(Sentence::gap_of_rows, BetweenStamps{1200.0})});
  PreviousRecord one;
  one.cycle = cycle;
  one.record = record;
  one.job = alone.job;
  one.course = alone.course;
  one.verdicts = alone.verdicts;
  return one;
}

}  // namespace

TEST_CASE("each previous record has a report of its own, with its own chart, thermocouples and warnings") {
  Analysis analysis = made_up_analysis();
  MadeUpRun short_run;
  short_run.channels = 2;
  short_run.hold_s = 1800.0;
  auto job = std::make_shared<Job>(*analysis.job);
  job->cycle = 2;
  job->previous_records = {{0, "lug-1.csv", std::nullopt, 1}, {0, "lug-2.csv", std::nullopt, 2}};
  analysis.job = job;
  analysis.previous_records = {previous(1, "lug-1.csv", short_run), previous(2, "lug-2.csv", {})};
  const Report report = make_report(analysis, {TemperatureUnit::fahrenheit, "0.1.0"});
  REQUIRE(report.previous_records.size() == 2);
  const Report& first = *report.previous_records[0];
  CHECK(first.subject == "Cycle 1: lug-1.csv");
  // The last two records are parts of one cycle: this record is its second.
  CHECK(report.previous_records[1]->subject == "Cycle 2, part 1: lug-2.csv");
  CHECK(first.chart.title == first.subject);
  CHECK(first.chart.traces.size() == 2);
  CHECK(first.chart.record->file == "lug-1.csv");
  CHECK(first.channels.size() == 2);
  REQUIRE(first.notices.size() == 1);
  CHECK(first.notices[0].text ==
        "One step between rows is longer than three intervals; the longest is 20 min.");
  CHECK(first.unit == TemperatureUnit::fahrenheit);
  // Its own clock, and the verdict of the record alone: 30 min of the 95 that are specified.
  CHECK(first.record[1].text == "2031-03-30 07:30:00");
  CHECK(first.verdict == Verdict::not_met);
  CHECK(report.verdict == Verdict::met);
  CHECK(first.previous_records.empty());
}

TEST_CASE("a job with one record has no previous report") {
  CHECK(make_report(made_up_analysis()).previous_records.empty());
}
