// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/report.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

bool says(const std::vector<LabelledText>& facts, const std::string& name) {
  return std::any_of(facts.begin(), facts.end(), [&](const LabelledText& fact) { return fact.name == name; });
}

std::string text_of(const std::vector<LabelledText>& facts, const std::string& name) {
  const auto found =
      std::find_if(facts.begin(), facts.end(), [&](const LabelledText& fact) { return fact.name == name; });
  return found == facts.end() ? std::string{} : found->text;
}

bool any_holds(const std::vector<std::string>& texts, const std::string& part) {
  return std::any_of(texts.begin(), texts.end(),
                     [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

const RequirementRow& row_of(const Report& report, const std::string& id) {
  const auto found = std::find_if(report.requirements.begin(), report.requirements.end(),
                                  [&](const RequirementRow& row) { return row.id == id; });
  REQUIRE(found != report.requirements.end());
  return *found;
}

}  // namespace

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
