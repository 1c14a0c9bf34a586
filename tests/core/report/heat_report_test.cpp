// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did, in the report and in the result: each figure with formula, source and what is missing.
#include <algorithm>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "core/report/json/result_json.h"
#include "core/report/report.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;
using Catch::Contains;

namespace {

Analysis analysed(const std::string& job_keys, const MadeUpRun& run = {}) {
  Analysis analysis = made_up_analysis(run);
  const auto job = parse_job(made_up_job() + job_keys, "d3-n2.toml");
  if (!job) FAIL(job.problems().front().text());
  analysis.job = std::make_shared<Job>(job.value());
  evaluate_made_up(analysis);
  return analysis;
}

std::string fact(const FigureTable& table, const std::string& name) {
  for (const LabelledText& one : table.facts)
    if (one.name == name) return one.text;
  return {};
}

const std::string kHydrogen = "[hydrogen]\nshape = \"plate\"\ndiffusivity = \"Coe and Moreton 1969\"\n";
const std::string kQualified = "[qualified]\nparameter = 19.5\nsource = \"PQR 12\"\n";

}  // namespace

TEST_CASE("the tempering of each thermocouple stands in a table with formula, constant and source") {
  const Report report = make_report(analysed(""));
  REQUIRE(report.heat.size() == 1);
  const FigureTable& table = report.heat.front();
  CHECK(table.title == "Tempering over the whole record");
  CHECK(fact(table, "Formula") == "P = T (20 + log10 t) / 1000, T in K (0 °C = 273.15 K), t in h");
  CHECK(fact(table, "Constant C") == "20");
  CHECK_THAT(fact(table, "Source"), Contains("Hollomon") && Contains("seen in print"));
  CHECK_THAT(fact(table, "Method"), Contains("Carried along"));
  REQUIRE(table.rows.size() == 4);
  CHECK(table.columns ==
        std::vector<std::string>{"Thermocouple", "P", "Hours at 590 °C", "Temperature not known"});
  for (const auto& row : table.rows) CHECK(row.size() == table.columns.size());
  CHECK(report.heat_summary.empty());
}

TEST_CASE("missing readings make a tempering at least, in table and record") {
  MadeUpRun run;
  run.hole = true;
  const Report report = make_report(analysed(kQualified, run));
  const FigureTable& table = report.heat.front();
  CHECK_THAT(table.rows[0][1], Catch::StartsWith("at least "));
  CHECK_THAT(table.rows[0][3], Contains("min"));
  CHECK_THAT(table.rows[1][1], !Contains("at least"));
  const auto line = std::find_if(report.record.begin(), report.record.end(), [](const LabelledText& one) {
    return one.name.find("Tempering parameter (Hollomon–Jaffe, C = 20)") != std::string::npos;
  });
  REQUIRE(line != report.record.end());
  CHECK_THAT(line->text, Contains("TC1 ≥ "));
  CHECK_THAT(fact(report.heat[1], "Weld W-117"), Contains("it may be more"));
}

TEST_CASE("hydrogen is an indication with its diffusivities, and says what is not counted") {
  const Report report = make_report(analysed(kHydrogen + kQualified));
  REQUIRE(report.heat.size() == 3);
  const FigureTable& qualified = report.heat[1];
  CHECK(fact(qualified, "Qualified for") == "P 19.500");
  CHECK_THAT(fact(qualified, "Source"), Contains("PQR 12"));
  CHECK_THAT(fact(qualified, "Weld W-117"), Contains("below the 19.500 qualified"));
  const FigureTable& hydrogen = report.heat[2];
  CHECK_THAT(hydrogen.title, Contains("an indication"));
  CHECK(fact(hydrogen, "Model") == "plate 38 mm thick, both faces free");
  CHECK_THAT(fact(hydrogen, "Diffusivity, chosen"),
             Contains("Coe and Moreton 1969") && Contains("60 to 650 °C"));
  CHECK_THAT(fact(hydrogen, "Diffusivity, for comparison"), Contains("EUROFER'97"));
  CHECK_THAT(hydrogen.notes.front(), Contains("no acceptance") && Contains("twentyfold"));
  for (const auto& row : hydrogen.rows) CHECK(row.size() == hydrogen.columns.size());
  // EUROFER'97 does not hold at 605 °C.
  CHECK_THAT(hydrogen.rows[0][4], Catch::StartsWith("at most "));
  REQUIRE(report.heat_summary.size() == 2);
  CHECK(report.heat_summary[0].name == "Qualified tempering");
  CHECK(report.heat_summary[1].name == "Hydrogen left, an indication");
}

TEST_CASE("hydrogen says which previous records it does not count, and absurd hours are not printed") {
  Analysis analysis =
      analysed(kHydrogen + "[qualified]\nholds = [[\"900 C\", \"100 h\"]]\nsource = \"mill\"\n");
  PreviousRecord one;
  one.record = analysis.record;
  one.job = analysis.job;
  one.course = analysis.course;
  one.verdicts = analysis.verdicts;
  analysis.previous_records = {one};
  const Report report = make_report(analysis);
  const std::vector<std::string>& notes = report.heat[2].notes;
  CHECK(std::any_of(notes.begin(), notes.end(), [](const std::string& note) {
    return note.starts_with("One previous record is not counted");
  }));
  CHECK(fact(report.heat[1], "Equivalent time") == "over 1,000,000 h at 590 °C, with C = 20");
}

TEST_CASE("the result has the heat with formula, source and flag") {
  const auto result = nlohmann::json::parse(result_json(analysed(kHydrogen + kQualified)));
  const auto& heat = result["heat"];
  CHECK(heat["tempering"]["constant"] == 20.0);
  CHECK(heat["tempering"]["flag"] == "seen");
  CHECK(heat["tempering"]["method"] == "carried along");
  REQUIRE(heat["tempering"]["channels"].size() == 4);
  CHECK(heat["tempering"]["channels"][0]["parameter"] == result["tempering"][0]["parameter"]);
  CHECK(heat["tempering"]["channels"][0]["records"].size() == 1);
  CHECK(heat["qualified"]["parameter"] == 19.5);
  CHECK(heat["qualified"]["source"] == "PQR 12");
  CHECK(heat["qualified"]["welds"][0]["below_qualified"].get<double>() > 0.0);
  CHECK(heat["hydrogen"]["shape"] == "plate");
  CHECK(heat["hydrogen"]["welds"][0]["size_mm"] == 38.0);
  const auto& channel = heat["hydrogen"]["welds"][0]["channels"][0];
  CHECK(channel["left"] == channel["by_diffusivity"][0]["mean"]);
  CHECK(channel["left"].get<double>() > 0.0);
  CHECK(channel["left"].get<double>() < 1.0);
  CHECK(channel["by_diffusivity"][1]["above_s"].get<double>() > 0.0);
}

TEST_CASE("with nothing evaluated there is no heat") {
  Analysis analysis = made_up_analysis();
  analysis.verdicts = nullptr;
  analysis.procedure = nullptr;
  CHECK(make_report(analysis).heat.empty());
  CHECK(nlohmann::json::parse(result_json(analysis))["heat"].is_null());
}
