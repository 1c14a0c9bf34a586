// SPDX-License-Identifier: GPL-3.0-or-later
// What is excluded or in no file stands on the first page. (Common practice of records that are signed, no
// source.)
#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

/// TC2 is not used, with a reason.
Analysis without_tc2() {
  Analysis analysis = made_up_analysis();
  auto job = parse_job(made_up_job() +
                           "[[thermocouple]]\ncolumn = \"TC2\"\nrole = \"off\"\n"
                           "reason = \"junction came off the work\"\n",
                       "d3-n2.toml");
  REQUIRE(job.ok());
  analysis.job = std::make_shared<Job>(std::move(job).value());
  Record record = *analysis.record;
  record.channels[1].role = ThermocoupleRole::off;
  record.channels[1].entry = 0;
  analysis.record = std::make_shared<const Record>(std::move(record));
  evaluate_made_up(analysis);
  return analysis;
}

}  // namespace

TEST_CASE("the first page names a thermocouple that is not used, with its reason, and the chart draws it") {
  need_application_and_font();
  const Report report = make_report(without_tc2(), {});
  REQUIRE(report.chart.traces[1].excluded);
  const Printed printed(report);
  CHECK_THAT(printed.text(1),
             Contains("Excluded by a person: TC2, whole record (junction came off the work)."));
  CHECK_THAT(printed.text(), Contains("TC2 (excluded)"));
}

TEST_CASE("a report from settings that are in no file says so on its first page, and no other does") {
  need_application_and_font();
  ReportOptions options;
  CHECK_THAT(Printed(make_report(made_up_analysis(), options)).text(1), !Contains("NOT SAVED"));
  options.unsaved = {"TC3: role air"};
  const std::string first = Printed(make_report(made_up_analysis(), options)).text(1);
  CHECK_THAT(first, Contains("NOT SAVED"));
  CHECK_THAT(first, Contains("TC3: role air"));
}
