// SPDX-License-Identifier: GPL-3.0-or-later
// What the report says of a run: verdict, record, job, method, cautions and the people.
#include "core/report/report.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"
#include "tests/core/report/report_parts.h"

using namespace soakwright;

TEST_CASE("a clean run is told as met, with every requirement of the procedure") {
  const Analysis analysis = made_up_analysis();
  const Report report = make_report(analysis, {std::nullopt, "0.1.0"});
  CHECK(report.title == "Stress relief of 38 mm drum nozzle seams");
  CHECK(report.subject == "Steam drum D-3, nozzle N2 to shell, weld W-117");
  CHECK(report.author == "Brackwater Fabrication");
  CHECK(report.program == "Soakwright 0.1.0");
  REQUIRE(report.verdict == Verdict::met);
  CHECK(report.verdict_text == "Met");
  // 5 of the whole record, 2 of the heat, 4 of the hold (its upper edge is one), 1 of the cool stage.
  CHECK(report.verdict_sentence == "12 of 12 requirements met.");
  CHECK(report.requirements.size() == analysis.verdicts->requirements.size());
  CHECK(text_of(report.job, "Client") == "Saltmarsh Heat & Power, Port Ellery");
  CHECK(text_of(report.record, "First reading") == "2031-04-02 06:00:00");
  CHECK(report.fingerprints.size() == 3);
  CHECK(report.fingerprints[0].sha256 == analysis.record->sha256);
  CHECK(report.fingerprints[1].file == "htp-021.toml");
}

TEST_CASE("each row leads back to the value that it was made from") {
  MadeUpRun run;
  run.excursion = true;
  run.dip = true;
  const Analysis analysis = made_up_analysis(run);
  const Report report = make_report(analysis);
  REQUIRE(report.verdict == Verdict::not_met);
  for (std::size_t i = 0; i < report.requirements.size(); ++i) {
    const Requirement& requirement = analysis.verdicts->requirements[report.requirements[i].requirement];
    CHECK(report.requirements[i].id == requirement.id);
    CHECK(report.requirements[i].verdict == requirement.verdict);
    CHECK_FALSE(report.requirements[i].text.empty());
  }
  REQUIRE_FALSE(report.findings.empty());
  for (const FindingRow& row : report.findings) {
    REQUIRE(row.requirement);
    CHECK(report.requirements[*row.requirement].id == row.id);
    CHECK(analysis.verdicts->findings[row.finding].channel.value_or(std::string{}) == row.where);
    CHECK_FALSE(row.text.empty());
  }
  for (std::size_t i = 0; i < report.channels.size(); ++i) CHECK(report.channels[i].channel == i);
}

TEST_CASE("method notes say only what applies") {
  const Analysis analysis = made_up_analysis();
  const Report report = make_report(analysis);
  CHECK(says(report.methods, "Rates"));
  CHECK(says(report.methods, "Hold time"));
  CHECK_FALSE(says(report.methods, "Hold time, accumulated"));
  CHECK_FALSE(says(report.methods, "Excursion allowed"));
  CHECK_FALSE(says(report.methods, "Tempering parameter"));
  CHECK_FALSE(says(report.methods, "Spares"));
  CHECK_FALSE(says(report.methods, "Times"));
  CHECK(text_of(report.methods, "Rates").find("window of 15 min, ") != std::string::npos);
  CHECK(text_of(report.methods, "Readings").find("no more than 5 min apart") != std::string::npos);

  SECTION("and the window that was used where the log is too sparse for the one specified") {
    MadeUpRun run;
    run.interval_s = 180.0;  // 8 intervals are 24 min
    const Report sparse = make_report(made_up_analysis(run));
    CHECK(text_of(sparse.methods, "Rates").find("window of 24 min, ") != std::string::npos);
  }
  SECTION("and the excursion allowed where there is one") {
    Analysis filled = analysis;
    auto procedure = std::make_shared<Procedure>(*analysis.procedure);
    procedure->evaluation.excursion_allowed = {180.0, TemperatureDifference::of_kelvin(5.0)};
    filled.procedure = procedure;
    evaluate_made_up(filled);
    CHECK(text_of(make_report(filled).methods, "Excursion allowed") ==
          "An excursion of no more than 3 min and no deeper than 5 °C does not interrupt a hold.");
  }
}

TEST_CASE("the cautions say that this is evidence and no release, and who decides") {
  const Analysis analysis = made_up_analysis();
  const Report report = make_report(analysis);
  REQUIRE_FALSE(report.cautions.empty());
  CHECK(report.cautions[0] ==
        "This report is evidence for a competent person. It is not a release of the work.");
  CHECK(any_holds(report.cautions, "governing code, the qualified procedure and licensed practice decide"));
  CHECK(any_holds(report.cautions, "Check each limit against your own edition"));
  CHECK(any_holds(report.cautions, "from memory"));
  CHECK_FALSE(any_holds(report.cautions, "Inconclusive means"));
  MadeUpRun run;
  run.ends_early = true;
  CHECK(any_holds(make_report(made_up_analysis(run)).cautions, "Inconclusive means"));
}

TEST_CASE("a review names the people and its dispositions stand beside their findings") {
  MadeUpRun run;
  run.dip = true;
  Analysis analysis = made_up_analysis(run);
  auto review = std::make_shared<Review>();
  review->file = "review.toml";
  review->sha256 = "cc03";
  review->result_sha256 = "1111";
  review->people.push_back(
      {Person::Role::reviewed, "Tomasz Lindqvist", CivilDate{2031, 4, 3}, std::nullopt, std::nullopt});
  FindingReview accepted;
  accepted.requirement = "stage-2.excursion-time";
  accepted.channel = "TC4";
  accepted.disposition = FindingReview::Disposition::repeat;
  accepted.reason = "heater changed";
  review->findings.push_back(accepted);
  analysis.review = review;

  analysis.result_sha256 = "1111";
  const Report report = make_report(analysis);
  REQUIRE(report.signatures.size() == 3);
  CHECK(report.signatures[0].role == "Performed by");
  CHECK(report.signatures[0].name.empty());
  CHECK(report.signatures[1].name == "Tomasz Lindqvist");
  CHECK(report.signatures[1].date == "2031-04-03");
  CHECK(report.signatures[2].role == "Witnessed by");
  std::size_t disposed = 0;
  for (const FindingRow& row : report.findings) {
    const bool named = row.id == "stage-2.excursion-time" && row.where == "TC4";
    CHECK(row.disposition == (named ? "To be repeated: heater changed" : ""));
    disposed += named ? 1 : 0;
  }
  CHECK(disposed == 1);
  CHECK(report.fingerprints.back().what == "Result");
  CHECK(report.fingerprints.back().sha256 == "1111");
}

TEST_CASE("a record without a procedure is shown as it was read") {
  Analysis analysis = made_up_analysis();
  analysis.procedure = nullptr;
  analysis.verdicts = nullptr;
  analysis.job = nullptr;
  const Report report = make_report(analysis);
  CHECK_FALSE(report.verdict);
  CHECK(report.requirements.empty());
  CHECK(report.findings.empty());
  CHECK_FALSE(report.procedure);
  CHECK(report.channels.size() == 4);
  CHECK(report.phases.size() == 3);
  CHECK(report.chart.traces.size() == 4);
  CHECK(any_holds(report.cautions, "No procedure was given"));
  CHECK(report.subject == "d3-n2.csv");
}

TEST_CASE(
    "every column that is not evaluated is listed with its reason, and all evaluated is said only then") {
  Analysis analysis = made_up_analysis();
  CHECK(text_of(make_report(analysis).record, "Thermocouples") == "4, all evaluated");
  CHECK_FALSE(says(make_report(analysis).record, "Columns not evaluated"));

  auto record = std::make_shared<Record>(*analysis.record);
  record->other_columns = {{6, "Set point", {ColumnContent::set_point}},
                           {7, "SP 2", {ColumnContent::set_point}},
                           {8, "Remark", {ColumnContent::text}}};
  record->notices = {
      {"not-evaluated", 3, 1, "Set point", state(Sentence::column_not_evaluated, ColumnContent::set_point)},
      {"gap", 40, 1, std::nullopt, state(Sentence::gap_of_rows, BetweenStamps{90.5})}};
  analysis.record = record;
  Report report = make_report(analysis);
  CHECK(text_of(report.record, "Thermocouples") == "4 evaluated");
  CHECK(text_of(report.record, "Columns not evaluated") == "set point: Set point, SP 2; text: Remark");
  CHECK(report.other_columns.size() == 3);
  // They are listed already; the other notices keep their place in the record.
  REQUIRE(report.notices.size() == 1);
  CHECK(report.notices[0].notice == 1);
  CHECK(report.notices[0].text ==
        "One step between rows is longer than three intervals; the longest is 1 min 30.500 s.");

  // As read only: what is evaluated is of the record as it was.
  analysis.procedure = nullptr;
  analysis.verdicts = nullptr;
  analysis.job = nullptr;
  record->other_columns.clear();
  record->channels[0].role = ThermocoupleRole::off;
  record->channels[0].entry = 0;
  record->channels[1].role = ThermocoupleRole::off;
  record->channels[2].zone = Zone::edge;
  report = make_report(analysis);
  CHECK(text_of(report.record, "Columns not evaluated") ==
        "off in the job: TC1; not listed in the job: TC2; edge zone: TC3");
  CHECK(text_of(report.record, "Thermocouples").find("1 of 4 evaluated") == 0);
}

TEST_CASE("the job's report number and further details are printed in their order") {
  Analysis analysis = made_up_analysis();
  auto job = std::make_shared<Job>(*analysis.job);
  job->report_number = "R-31-04";
  job->details = {{"Order", "4711"}, {"Code", "works rules"}, {"Empty", ""}};
  analysis.job = job;
  const std::vector<LabelledText> facts = make_report(analysis).job;
  CHECK(facts.front() == LabelledText{"Report number", "R-31-04"});
  const auto order = std::find(facts.begin(), facts.end(), LabelledText{"Order", "4711"});
  REQUIRE(order + 1 < facts.end());
  CHECK(*(order + 1) == LabelledText{"Code", "works rules"});
  CHECK_FALSE(says(facts, "Empty"));
}

TEST_CASE("a delimiter or decimal sign that is easily overlooked is told by its name") {
  Analysis analysis = made_up_analysis();
  auto record = std::make_shared<Record>(*analysis.record);
  for (const auto& [value, said] :
       {std::pair{"\t", "tab"}, {" ", "spaces"}, {";", "semicolon (;)"}, {",", "comma (,)"}}) {
    record->reading.delimiter.value = value;
    analysis.record = record;
    CHECK(text_of(make_report(analysis).reading, "Delimiter") == std::string{said} + " (found)");
  }
}
