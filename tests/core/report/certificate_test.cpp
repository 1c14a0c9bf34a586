// SPDX-License-Identifier: GPL-3.0-or-later
// What a client reads first. Common practice, no source: required beside recorded, and nothing that is missed
// left out.
#include <algorithm>
#include <memory>
#include <string>

#include <catch2/catch.hpp>

#include "core/analyse.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "tests/core/report/made_up_run.h"
#include "tests/core/report/report_parts.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

const SummaryRow* row_of(const Certificate& certificate, const std::string& label) {
  for (const SummaryRow& row : certificate.summary)
    if (row.label == label) return &row;
  return nullptr;
}

Report sample(const std::string& job) {
  Request request;
  request.job = std::string(SOAKWRIGHT_SOURCE_DIR) + "/sample-logs/" + job;
  const auto analysis = check(request);
  REQUIRE(analysis);
  return make_report(analysis.value());
}

}  // namespace

TEST_CASE("the summary has its figures in the other unit beside them where both are wanted") {
  ReportOptions options;
  const auto heating = [&] {
    return *row_of(make_report(made_up_analysis(), options).certificates.front(), "Heating rate");
  };
  CHECK(heating().required_also.empty());
  CHECK(heating().recorded_also.empty());
  options.both_units = true;
  // 5500 / 38 = 144.74 °C/h; a rate is no temperature: times 1.8 and no 32.
  CHECK(heating().required == "≤ 144.74 °C/h");
  CHECK(heating().required_also == "≤ 260.53 °F/h");
  const Report both = make_report(made_up_analysis(), options);
  CHECK(row_of(both.certificates.front(), "Holding temperature")->required_also == "1094 to 1148 °F");
  CHECK(row_of(both.certificates.front(), "Hold time")->required_also.empty());
  options.unit = TemperatureUnit::fahrenheit;
  CHECK(heating().required == "≤ 260.53 °F/h");
  CHECK(heating().required_also == "≤ 144.74 °C/h");
}

TEST_CASE("the summary has the cycle's limits beside what was recorded") {
  const Report report = make_report(made_up_analysis());
  REQUIRE(report.certificates.size() == 1);
  const Certificate& certificate = report.certificates.front();
  CHECK(certificate.verdict == Verdict::met);
  for (const char* label : {"Heating rate", "Holding temperature", "Hold time", "Cooling rate",
                            "Spread, stage 1, heat", "Spread, stage 2, hold", "Maximum temperature"}) {
    INFO(label);
    const SummaryRow* row = row_of(certificate, label);
    REQUIRE(row != nullptr);
    CHECK_FALSE(row->required.empty());
    CHECK_FALSE(row->recorded.empty());
    CHECK(row->verdict == Verdict::met);
  }
  CHECK(row_of(certificate, "Holding temperature")->required == "590 to 620 °C");
  CHECK(row_of(certificate, "Heating rate")->required == "≤ 144.74 °C/h");
  const SummaryRow* others = row_of(certificate, "Other requirements");
  REQUIRE(others != nullptr);
  // 12 in all; six of the lines above are one each, and the holding temperature has the range's upper edge
  // and the time out of range, which count among the others too.
  CHECK(others->recorded == "6 of 6 met");
}

TEST_CASE("whatever is not met stands in the summary, and what is met does not hide it") {
  MadeUpRun run;
  run.dip = true;
  run.hot = true;
  const Report report = make_report(made_up_analysis(run));
  const Certificate& certificate = report.certificates.front();
  for (const RequirementRow& row : report.requirements) {
    if (row.verdict == Verdict::met) continue;
    INFO(row.id);
    CHECK(std::any_of(certificate.summary.begin(), certificate.summary.end(), [&](const SummaryRow& line) {
      const bool named = line.label.rfind(row.label, 0) == 0 || line.label.rfind("Spread", 0) == 0;
      return named && line.recorded == row.measured && line.verdict == row.verdict;
    }));
  }
  const SummaryRow* holding = row_of(certificate, "Holding temperature");
  REQUIRE(holding != nullptr);
  CHECK(holding->verdict == Verdict::not_met);
}

TEST_CASE("a holding temperature outside its range is not called met by limits that do not look at it") {
  MadeUpRun run;
  run.dip = true;
  Analysis analysis = made_up_analysis(run);
  auto procedure = std::make_shared<Procedure>(*analysis.procedure);
  for (Stage& stage : procedure->stages)
    if (auto* hold = std::get_if<HoldStage>(&stage.specified)) hold->excursion_time_max_s.reset();
  analysis.procedure = procedure;
  analysis.verdicts =
      std::make_shared<const Verdicts>(evaluate(*analysis.record, *procedure, analysis.job.get()));
  const Report report = make_report(analysis);
  const SummaryRow* holding = row_of(report.certificates.front(), "Holding temperature");
  REQUIRE(holding != nullptr);
  CHECK_FALSE(holding->verdict);
}

TEST_CASE("a procedure without a maximum temperature still shows the highest reading") {
  const Report report = sample("w-121-bake-out/job.toml");
  const Certificate& certificate = report.certificates.front();
  const bool limited =
      std::any_of(report.requirements.begin(), report.requirements.end(),
                  [](const RequirementRow& row) { return row.id == "record.temperature-max"; });
  const SummaryRow* highest = row_of(certificate, "Highest temperature");
  CHECK((highest == nullptr) == limited);
  if (highest != nullptr) {
    CHECK(highest->required == "not specified");
    CHECK_FALSE(highest->verdict);
  }
}

TEST_CASE("the certificate names code, procedure, instruments and every exclusion with its reason") {
  const Report plain = make_report(made_up_analysis());
  const auto& facts = plain.certificates.front().treatment;
  CHECK_THAT(text_of(facts, "Code"),
             Contains("Invented for this test, edition 2031, clause 4.2, from memory"));
  CHECK(text_of(facts, "Procedure") == "HTP-021, revision C, Stress relief of 38 mm drum nozzle seams");
  CHECK(text_of(facts, "Calibration") == "of the thermocouples: not given in the job");
  const Report broken = sample("w-124-half-broken/job.toml");
  CHECK_THAT(text_of(broken.certificates.front().treatment, "Excluded"),
             Contains("CH2") && Contains("junction came off the work"));
  const Report guarded = sample("w-117-stress-relief/job-guarded.toml");
  CHECK_THAT(text_of(guarded.certificates.front().treatment, "Recorder"), Contains("BF-R-0412"));
  CHECK_THAT(text_of(guarded.certificates.front().treatment, "Calibration"), Contains("type K, class 1"));
}

TEST_CASE("of several welds each has a certificate with its own verdict, thermocouples and thickness") {
  Analysis analysis = made_up_analysis();
  auto job = std::make_shared<Job>(*analysis.job);
  job->weld.reset();
  job->welds = {{1, "W-1", Thickness::of(38.0, LengthUnit::millimetre), "P265GH", {}, {}},
                {2, "W-2", Thickness::of(200.0, LengthUnit::millimetre), "P295GH", {}, {}}};
  auto record = std::make_shared<Record>(*analysis.record);
  for (std::size_t i = 0; i < record->channels.size(); ++i)
    record->channels[i].weld = i % 2 == 0 ? "W-1" : "W-2";
  analysis.job = job;
  analysis.record = record;
  analysis.verdicts =
      std::make_shared<const Verdicts>(evaluate(*record, *analysis.procedure, analysis.job.get()));
  const Report report = make_report(analysis);
  REQUIRE(report.certificates.size() == 3);
  CHECK(report.certificates[0].weld.empty());
  CHECK(report.certificates[0].verdict == Verdict::not_met);
  CHECK(report.certificates[1].weld == "W-1");
  CHECK(report.certificates[1].verdict == Verdict::met);
  CHECK(text_of(report.certificates[1].work, "Thickness") == "38 mm");
  CHECK(report.certificates[2].verdict == Verdict::not_met);  // 5500 / 200 is held at 55 °C/h
  CHECK(text_of(report.certificates[2].work, "Material") == "P295GH");
  const SummaryRow* rate = row_of(report.certificates[2], "Heating rate");
  REQUIRE(rate != nullptr);
  CHECK(rate->required == "≤ 55 °C/h");
  CHECK((rate->where == "TC2" || rate->where == "TC4"));
}

TEST_CASE("the company of the job is at the head of the report, its picture found from the job's folder") {
  const auto job = parse_job(
      "soakwright = \"job 1\"\n[company]\nname = \"Brackwater Fabrication\"\naddress = \"Port Ellery\"\n"
      "picture = \"marks/brackwater.png\"\n",
      "jobs/one.toml");
  REQUIRE(job);
  Analysis analysis = made_up_analysis();
  analysis.job = std::make_shared<const Job>(job.value());
  const Letterhead company = make_report(analysis).company;
  CHECK(company.name == "Brackwater Fabrication");
  CHECK(company.address == "Port Ellery");
  CHECK(company.picture == "jobs/marks/brackwater.png");
  const std::vector<std::string> named = files_named_by(job.value());
  CHECK(std::find(named.begin(), named.end(), company.picture) != named.end());
  CHECK_THAT(parse_job("soakwright = \"job 1\"\n[company]\naddress = \"x\"\n", "f").problems().front().text(),
             Contains("`name` is missing"));
}

TEST_CASE("events number the findings, and the chart has the same numbers") {
  MadeUpRun run;
  run.hole = true;
  const Report report = make_report(made_up_analysis(run));
  REQUIRE_FALSE(report.events.empty());
  CHECK(report.events.size() <= report.findings.size());
  std::size_t members = 0;
  for (const EventRow& event : report.events) {
    members += event.findings.size();
    for (const std::size_t finding : event.findings)
      CHECK(report.findings[finding].tag.rfind(event.tag, 0) == 0);
  }
  CHECK(members == report.findings.size());
  for (const ChartMark& mark : report.chart.marks)
    CHECK(report.findings[mark.finding].tag.rfind(mark.tag, 0) == 0);
}

TEST_CASE("neighbouring columns that are off are named in one line") {
  Analysis analysis = made_up_analysis();
  auto record = std::make_shared<Record>(*analysis.record);
  const Channel first = record->channels[0];
  for (std::size_t i = 0; i < 172; ++i) {
    Channel off = first;
    off.column = 8 + i;
    off.name = "TCE_" + std::to_string(1 + i);
    off.role = ThermocoupleRole::off;
    record->channels.push_back(off);
  }
  analysis.record = record;
  const std::string said = text_of(make_report(analysis).record, "Columns not evaluated");
  CHECK_THAT(said, Contains("TCE_1 to TCE_172 (columns 8 to 179)"));
  CHECK(said.size() < 120);
}
