// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPageSize>
#include <algorithm>
#include <fstream>
#include <iterator>
#include <sstream>

#include <catch2/catch.hpp>

#include "app/pdf/report_writer.h"
#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

MadeUpRun faulty_run() {
  MadeUpRun run;
  run.excursion = true;
  run.dip = true;
  run.hot = true;
  return run;
}

}  // namespace

TEST_CASE("the printed report can be searched for verdict, requirements, caution and digest") {
  const Analysis analysis = made_up_analysis(faulty_run());
  const Report report = make_report(analysis, {std::nullopt, "0.1.0"});
  REQUIRE(report.verdict == Verdict::not_met);
  const Printed printed(report);
  const std::string text = printed.text();
  CHECK_THAT(printed.text(1), Contains("Not met"));
  CHECK_THAT(printed.text(1), Contains("It is not a release of the work."));
  for (const RequirementRow& row : report.requirements) {
    if (row.verdict != Verdict::met) CHECK_THAT(text, Contains(row.id));
    CHECK_THAT(text, Contains(row.label.substr(0, row.label.find(' '))));
  }
  CHECK_THAT(text, Contains("licensed practice decide"));
  CHECK_THAT(text, Contains("SHA-256 " + analysis.record->sha256));
  CHECK_THAT(text, Contains(analysis.procedure->sha256));
  CHECK_THAT(text, Contains(analysis.job->sha256));
  for (const char* words :
       {"Saltmarsh Heat & Power", "Brackwater Fabrication", "W-117", "HTP-021", "Signature", "Performed by",
        "Reviewed by", "Witnessed by", "How it was measured", "Local time"})
    CHECK_THAT(text, Contains(words));
  for (const HoldTable::Row& row : report.holds[0].rows) CHECK_THAT(text, Contains(row.name));
}

TEST_CASE("every page has its number, and the number of pages") {
  const Printed printed(make_report(made_up_analysis(faulty_run())));
  const int pages = printed.pages();
  REQUIRE(pages >= 4);
  for (int page = 1; page <= pages; ++page)
    CHECK_THAT(printed.text(page), Contains("Page " + std::to_string(page) + " of " + std::to_string(pages)));
}

TEST_CASE("charts are lines and text, not pictures, and fonts are embedded") {
  const Printed printed(make_report(made_up_analysis(faulty_run())));
  // Two lines of heading, and no picture under them.
  CHECK(lines_of(output_of("pdfimages", {"-list", printed.path()})).size() == 2);
  const auto fonts = lines_of(output_of("pdffonts", {printed.path()}));
  REQUIRE(fonts.size() > 2);
  for (std::size_t i = 2; i < fonts.size(); ++i) {
    // name … encoding emb sub uni object ID: from the right "emb" is the fifth.
    std::istringstream in(fonts[i]);
    const std::vector<std::string> words{std::istream_iterator<std::string>(in), {}};
    REQUIRE(words.size() >= 5);
    CHECK(words[words.size() - 5] == "yes");
    CHECK(words[words.size() - 3] == "yes");  // and its letters can be found
  }
}

TEST_CASE("pages are A4, the chart's lies on its side") {
  const Printed printed(make_report(made_up_analysis()));
  const std::string info = output_of("pdfinfo", {"-f", "1", "-l", "99", printed.path()});
  int upright = 0;
  int lying = 0;
  for (const std::string& line : lines_of(info)) {
    if (line.compare(0, 5, "Page ") != 0) continue;
    // ISO 216: 210 mm x 297 mm; in points of 1/72 in 595.3 x 841.9.
    if (line.find("595 x 842") != std::string::npos) ++upright;
    if (line.find("842 x 595") != std::string::npos) ++lying;
  }
  CHECK(lying == 1);
  CHECK(upright == printed.pages() - 1);
}

TEST_CASE("the document says what it is, whose and of what, and is built as PDF/A-3b asks") {
  Analysis analysis = made_up_analysis();
  auto job = std::make_shared<Job>(*analysis.job);
  job->contractor = "Brackwater Fabrication (Ærø) & Söhne";
  analysis.job = job;
  const Printed printed(make_report(analysis));
  const std::string info = output_of("pdfinfo", {"-enc", "UTF-8", printed.path()});
  CHECK_THAT(info, Contains("Stress relief of 38 mm drum nozzle seams"));
  CHECK_THAT(info, Contains("Brackwater Fabrication (Ærø) & Söhne"));
  CHECK_THAT(info, Contains("Steam drum D-3, nozzle N2 to shell, weld W-117"));
  const std::string xmp = output_of("pdfinfo", {"-meta", printed.path()});
  CHECK_THAT(xmp, Contains("<pdfaid:part>3</pdfaid:part>"));
  CHECK_THAT(xmp, Contains("<pdfaid:conformance>B</pdfaid:conformance>"));
  CHECK_THAT(xmp, Contains("Brackwater Fabrication (Ærø) &amp; Söhne"));
}

TEST_CASE("with a set date the same report gives the same bytes") {
  const Report report = make_report(made_up_analysis(faulty_run()));
  qputenv("SOURCE_DATE_EPOCH", "1933545600");
  const Printed first(report);
  const Printed second(report);
  qunsetenv("SOURCE_DATE_EPOCH");
  CHECK(bytes_of(first.path()) == bytes_of(second.path()));
  CHECK_THAT(output_of("pdfinfo", {"-isodates", first.path()}),
             Contains("CreationDate:    2031-04-10T00:00:00"));
}

TEST_CASE("nothing is cut: every sentence of a run with many findings and long names is on the pages") {
  Analysis analysis = made_up_analysis(faulty_run());
  auto record = std::make_shared<Record>(*analysis.record);
  record->channels[0].name =
      "Thermocouple number one on the inside of the nozzle at ninety degrees, lower half";
  record->channels[1].name =
      "A-name-without-a-single-blank-in-it-that-is-longer-than-any-column-of-any-table-can-be";
  analysis.record = record;
  evaluate_made_up(analysis);
  auto verdicts = std::make_shared<Verdicts>(*analysis.verdicts);
  for (int i = 0; i < 200; ++i) {
    Finding finding;
    finding.requirement = "stage-2.excursion-time";
    finding.weld = verdicts->requirements.back().weld;
    finding.channel = "TC3";
    finding.from_s = 100.0 * i;
    finding.to_s = 100.0 * i + 50.0;
    finding.what = {state(Sentence::no_such_period, "made-up finding number " + std::to_string(i))};
    verdicts->findings.push_back(finding);
  }
  analysis.verdicts = verdicts;
  const Report report = make_report(analysis);
  const Printed printed(report);
  const std::string text = printed.text();
  for (int i = 0; i < 200; ++i)
    CHECK_THAT(text, Contains("made-up finding number " + std::to_string(i) + "\""));
  CHECK_THAT(text, Contains("Thermocouple number one"));
  // Broken over lines, but all of it.
  CHECK_THAT(text, Contains("A-name-without-a-single-blank"));
}

TEST_CASE("a table's header is repeated on each of its pages") {
  Analysis analysis = made_up_analysis();
  auto record = std::make_shared<Record>(*analysis.record);
  for (std::size_t i = 0; i < 300; ++i)
    record->notices.push_back(
        {"missing-text", i + 10, 1, "TC1",
         state(Sentence::cells_of_one_text, Count::of(1), AsWritten{"fault " + std::to_string(i)})});
  analysis.record = record;
  const Printed printed(make_report(analysis));
  int with_notices = 0;
  for (int page = 1; page <= printed.pages(); ++page) {
    const std::string text = printed.text(page);
    if (text.find("missing-text") == std::string::npos) continue;
    ++with_notices;
    CHECK_THAT(text, Contains("Line Count Channel Notice What"));
  }
  CHECK(with_notices > 2);
}

TEST_CASE("a record without a procedure is printed too") {
  Analysis analysis = made_up_analysis();
  analysis.procedure = nullptr;
  analysis.verdicts = nullptr;
  const Printed printed(make_report(analysis));
  const std::string text = printed.text();
  CHECK_THAT(text, Contains("Record only, not evaluated"));
  CHECK_THAT(text, Contains("Phases"));
  CHECK_THAT(text, !Contains("Requirements"));
}

TEST_CASE("a report is written whole or not at all") {
  need_application_and_font();
  const Report report = make_report(made_up_analysis());
  const auto nowhere = write_report({report}, "/nowhere/at/all/report.pdf");
  REQUIRE(nowhere);
  CHECK(nowhere->kind == ProblemKind::cannot_write);
  CHECK(nowhere->file == "/nowhere/at/all/report.pdf");
  const auto folder = write_report({report}, "/tmp");
  REQUIRE(folder);
  CHECK(folder->kind == ProblemKind::cannot_write);
  CHECK_THAT(folder->text(), Contains("folder"));
}

TEST_CASE("a remark by hand stands on the chart and in its own list, with its moment") {
  Analysis analysis = made_up_analysis({});
  Record record = *analysis.record;
  record.remarks.push_back({5.0 * 3600.0, "power cut, 4 min"});
  analysis.record = std::make_shared<const Record>(std::move(record));
  const Report report = make_report(analysis);
  REQUIRE(report.remarks.size() == 1);
  REQUIRE(report.chart.remarks.size() == 1);
  CHECK(report.chart.remarks[0].at_s == 5.0 * 3600.0);
  const Printed printed(report);
  const std::string text = printed.text();
  const std::size_t once = text.find("power cut, 4 min");
  REQUIRE(once != std::string::npos);
  CHECK(text.find("power cut, 4 min", once + 1) != std::string::npos);
  CHECK_THAT(text, Contains("Remarks"));
}

TEST_CASE("what the findings mean is explained once for each limit, with the first deviation") {
  const Report report = make_report(made_up_analysis(faulty_run()));
  const Printed printed(report);
  std::string text = printed.text();
  std::replace(text.begin(), text.end(), '\n', ' ');
  CHECK_THAT(text, Contains("The findings explained"));
  REQUIRE_FALSE(report.first_deviation.empty());
  CHECK_THAT(text, Contains("First deviation: "));
  CHECK_THAT(text, Contains(report.first_deviation.substr(0, 19)));
  CHECK_THAT(text, Contains("first deviation"));
  for (const char* part :
       {"Required: ", "Why: ", "Usual causes: ", "Check first: ", "common practice, no source"})
    CHECK_THAT(text, Contains(part));
  // Met, there is nothing to explain.
  CHECK(Printed(make_report(made_up_analysis({}))).text().find("The findings explained") ==
        std::string::npos);
}

TEST_CASE("the printed report lists what was changed by hand, and says nothing of it where nothing was") {
  Analysis analysis = made_up_analysis();
  CHECK_THAT(Printed(make_report(analysis)).text(), !Contains("Manual changes"));
  auto record = std::make_shared<Record>(*analysis.record);
  record->reading.changed_by_hand = {{"delimiter", "tab", std::nullopt, {}},
                                     {"decimal", ".", std::nullopt, {}},
                                     {"dates", "dmy", std::nullopt, {}},
                                     {"unit", "F", 3, "TC2"},
                                     {"cold_junction", "23.0 C", 5, "TC4"}};
  analysis.record = record;
  const std::string text = Printed(make_report(analysis)).text();
  CHECK_THAT(text, Contains("Manual changes"));
  for (const char* change : {"delimiter tab", "decimal sign '.'", "date order dmy", "column 3 (TC2): unit F",
                             "column 5 (TC4): cold junction 23.0 C"})
    CHECK_THAT(text, Contains(change));
}

TEST_CASE("a report with open findings is stamped as a draft on each page, without transparency") {
  const Printed open(make_report(made_up_analysis(faulty_run())));
  for (int page = 1; page <= open.pages(); ++page) CHECK_THAT(open.text(page), Contains("DRAFT"));
  CHECK_THAT(open.text(1), Contains("findings have no disposition yet"));
  // PDF/A-1 forbids transparency (ISO 19005-1, 6.4): no constant alpha below 1, no soft mask.
  const std::string bytes = bytes_of(open.path());
  CHECK(bytes.find("/SMask /None") == bytes.find("/SMask"));
  for (std::size_t at = bytes.find("/ca "); at != std::string::npos; at = bytes.find("/ca ", at + 1))
    CHECK(std::stod(bytes.substr(at + 4)) == 1.0);
  const Printed closed(make_report(made_up_analysis()));
  CHECK_THAT(closed.text(), !Contains("DRAFT"));
}
