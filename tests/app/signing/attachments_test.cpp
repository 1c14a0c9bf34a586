// SPDX-License-Identifier: GPL-3.0-or-later
// The files inside a report, taken out with other people's tools (poppler, qpdf).
#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/evidence_update.h"
#include "app/evidence/pdf_date.h"
#include "core/units/sha256.h"
#include "tests/app/signing/made_report.h"

using namespace soakwright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

std::string sample(const std::string& path) { return source_file("sample-logs/" + path); }

/// A folder with what pdfdetach takes out of the report.
std::vector<std::string> detached_from(const std::string& report, const TemporaryFolder& into) {
  const std::string said = printed_by("pdfdetach -saveall -o '" + into.file("") + "' '" + report + "'");
  INFO(said);
  return into.names();
}

}  // namespace

TEST_CASE(
    "log, procedure, job and result are inside a report, byte for byte, and nothing is wrong with the file") {
  const TemporaryFolder folder;
  const std::string json = folder.file("by-json.json");
  const std::string report = report_of(folder, "w-117-stress-relief", "report.pdf", {"--json", json});
  const TemporaryFolder out;
  CHECK(detached_from(report, out) ==
        std::vector<std::string>{"d3-n2.csv", "job.toml", "procedure.toml", "result.json"});
  CHECK(text_of(out.file("d3-n2.csv")) == text_of(sample("w-117-stress-relief/d3-n2.csv")));
  CHECK(text_of(out.file("job.toml")) == text_of(sample("w-117-stress-relief/job.toml")));
  CHECK(text_of(out.file("procedure.toml")) == text_of(sample("w-117-stress-relief/htp-021.toml")));
  CHECK(text_of(out.file("result.json")) == text_of(json));
  for (const char* file : {"d3-n2.csv", "job.toml", "procedure.toml"})
    CHECK_THAT(text_of(json), Contains(sha256_hex(text_of(out.file(file)))));
  CHECK_THAT(printed_by("pdftotext '" + report + "' -"), Contains(sha256_hex(text_of(json)).substr(0, 32)));

  const std::string check = printed_by("qpdf --check '" + report + "'");
  CHECK_THAT(check, Contains("No syntax or stream encoding errors found") && !Contains("WARNING"));
  const std::string list = printed_by("qpdf --verbose --list-attachments '" + report + "'");
  for (const char* part :
       {"d3-n2.csv", "text/csv", "application/toml", "application/json", "modification date", "checksum"})
    CHECK_THAT(list, Contains(part));
}

// ISO 19005-3, 6.8 and Annex E: each file has a relationship and stands in the catalogue's /AF; 6.6.4: part
// and conformance in the XMP.
TEST_CASE("the files inside are associated files, and the metadata say part 3, conformance B") {
  const TemporaryFolder folder;
  const std::string report = report_of(folder, "w-117-stress-relief");
  const std::string objects = printed_by("qpdf --qdf --object-streams=disable '" + report + "' -");
  std::size_t relations = 0;
  for (std::size_t at = 0; (at = objects.find("/AFRelationship /", at)) != std::string::npos; ++at)
    ++relations;
  CHECK(relations == 4);
  CHECK_THAT(objects, Contains("/AF [") && Contains("/EmbeddedFiles") && Contains("/OutputIntents"));
  CHECK_THAT(objects, !Contains("/Encrypt") && !Contains("/JavaScript") && !Contains("/SMask /L"));
  const std::string xmp = printed_by("pdfinfo -meta '" + report + "'");
  CHECK_THAT(xmp, Contains("<pdfaid:part>3</pdfaid:part>") &&
                      Contains("<pdfaid:conformance>B</pdfaid:conformance>"));
  CHECK_THAT(printed_by("pdfinfo '" + report + "'"), Contains("PDF version:     1.7"));
}

TEST_CASE("with a set date the same files give the same bytes in another process") {
  const TemporaryFolder folder;
  std::vector<std::string> bytes;
  for (const char* name : {"a.pdf", "b.pdf"}) {
    const std::string path = folder.file(name);
    const Ran ran =
        run_soakwright({"check", "--job", sample("w-118-late-and-dipping/job.toml"), "--report", path},
                       {{"SOURCE_DATE_EPOCH", "1933545600"}});
    REQUIRE(ran.exit_code == 1);
    bytes.push_back(text_of(path));
  }
  CHECK(bytes[0] == bytes[1]);
}

TEST_CASE("a name that is taken gets a number, whatever its letters' case") {
  using Kind = AttachedFile::Kind;
  const auto file = [](Kind kind, const char* name) { return AttachedFile{kind, 0, name, {}, std::nullopt}; };
  struct Row {
    std::vector<AttachedFile> files;
    std::vector<std::string> names;
  };
  // Common practice, no source.
  for (const Row& row : std::vector<Row>{
           {{file(Kind::log, "a.csv"), file(Kind::result, "r")}, {"a.csv", "result.json"}},
           {{file(Kind::log, "JOB.toml"), file(Kind::job, "x.toml"), file(Kind::result, "r")},
            {"JOB-2.toml", "job.toml", "result.json"}},
           {{file(Kind::log, "a.csv"), file(Kind::previous_log, "a.csv"), file(Kind::previous_log, "A.CSV")},
            {"a.csv", "a-2.csv", "A-3.CSV"}},
           {{file(Kind::log, "noend"), file(Kind::previous_log, "noend")}, {"noend", "noend-2"}},
           {{file(Kind::log, ".log"), file(Kind::previous_log, ".log")}, {".log", ".log-2"}},
           {{file(Kind::log, "result.json"), file(Kind::result, "result.json")},
            {"result-2.json", "result.json"}}})
    CHECK(evidence::attached_names(row.files) == row.names);
}

TEST_CASE("logs and jobs of previous records are inside too, and the report can be made again from them") {
  // The sample, with a job for the first day; both logs have one name, in folders of their own.
  const TemporaryFolder folder;
  const std::string from = sample("w-128-over-two-days");
  fs::create_directory(folder.file("day-1"));
  fs::copy_file(from + "/lug-day-1.csv", folder.file("day-1/lug.csv"));
  fs::copy_file(from + "/job-day-1.toml", folder.file("day-1/job.toml"));
  fs::copy_file(from + "/lug-day-2.csv", folder.file("lug.csv"));
  fs::copy_file(from + "/htp-052.toml", folder.file("htp-052.toml"));
  std::string text = text_of(from + "/job.toml");
  const auto replace = [&text](const std::string& old, const std::string& by) {
    REQUIRE(text.find(old) != std::string::npos);
    text.replace(text.find(old), old.size(), by);
  };
  replace("\"lug-day-2.csv\"", "\"lug.csv\"");
  replace("\"lug-day-1.csv\"", "\"day-1/lug.csv\"\njob = \"day-1/job.toml\"");
  const std::string report = folder.file("report.pdf");
  const Ran made = run_soakwright({"check", "--job", folder.with("job.toml", text), "--report", report});
  INFO(made.err);
  REQUIRE(made.exit_code <= 2);
  const TemporaryFolder out;
  CHECK(detached_from(report, out) == std::vector<std::string>{"job-2.toml", "job.toml", "lug-2.csv",
                                                               "lug.csv", "procedure.toml", "result.json"});
  CHECK(text_of(out.file("lug-2.csv")) == text_of(sample("w-128-over-two-days/lug-day-1.csv")));
  CHECK_THAT(text_of(out.file("result.json")),
             Contains("\"job_sha256\": \"" + sha256_hex(text_of(out.file("job-2.toml")))));
  const Ran verified = run_soakwright({"verify", report});
  INFO(verified.out << verified.err);
  CHECK(verified.exit_code == 2);
  CHECK_THAT(verified.out, Contains("gives these pages again, byte for byte") && !Contains("does not hold"));
}

TEST_CASE("the report of each sample is evaluated and printed again from itself alone") {
  for (const auto& entry : fs::directory_iterator(source_file("sample-logs"))) {
    if (!entry.is_directory()) continue;
    const std::string name = entry.path().filename().string();
    INFO(name);
    const TemporaryFolder folder;
    const std::string report =
        report_of(folder, name, "moved.pdf", {"--unit", "F", "--both-units", "--paper", "letter"});
    const Ran verified = run_soakwright({"verify", report});
    INFO(verified.out << verified.err);
    CHECK(verified.exit_code == 2);
    CHECK_THAT(verified.out,
               Contains("There is no signature") && !Contains("does not hold") && !Contains("Not compared"));
  }
}

TEST_CASE("the date order that is given beside the job goes into the report, and is used again") {
  const TemporaryFolder folder;
  std::string rows = "Time,TC1 (C),TC2 (C)\n";
  for (int minute = 0; minute < 60; ++minute) {
    const std::string time = (minute < 10 ? "0" : "") + std::to_string(minute);
    rows += "03/04/2031 06:" + time + ":00," + std::to_string(20 + minute) + ".0," +
            std::to_string(21 + minute) + ".0\n";
  }
  const std::string log = folder.with("log.csv", rows);
  const std::string procedure =
      folder.with("p.toml",
                  "soakwright = \"procedure 1\"\nnumber = \"P-1\"\nunit = \"C\"\n[[stage]]\nkind = "
                  "\"heat\"\nabove = 30\nbelow = 70\nrate_max = 90\n");
  const std::string report = folder.file("r.pdf");
  const Ran ran =
      run_soakwright({"check", log, "--procedure", procedure, "--dates", "mdy", "--report", report});
  INFO(ran.err);
  REQUIRE(ran.exit_code == 0);
  const Ran verified = run_soakwright({"verify", report});
  INFO(verified.out << verified.err);
  CHECK(verified.exit_code == 2);
  CHECK_THAT(verified.out, !Contains("does not hold") && !Contains("Not compared"));
}

TEST_CASE("the company's picture is inside too, so that page 1 can be printed again") {
  // One red pixel (ISO/IEC 15948).
  const std::string png(
      "\x89\x50\x4e\x47\x0d\x0a\x1a\x0a\x00\x00\x00\x0d\x49\x48\x44\x52\x00\x00\x00\x01\x00\x00\x00\x01\x08"
      "\x02\x00\x00\x00\x90\x77\x53\xde\x00\x00\x00\x0c\x49\x44\x41\x54\x78\x9c\x63\xf8\xcf\xc0\x00\x00\x03"
      "\x01\x01\x00\xc9\xfe\x92\xef\x00\x00\x00\x00\x49\x45\x4e\x44\xae\x42\x60\x82",
      69);
  const TemporaryFolder folder;
  const std::string from = sample("w-117-stress-relief");
  for (const char* name : {"d3-n2.csv", "htp-021.toml"}) fs::copy_file(from + "/" + name, folder.file(name));
  fs::create_directory(folder.file("marks"));
  static_cast<void>(folder.with("marks/mark.png", png));
  const std::string job = folder.with(
      "job.toml", text_of(from + "/job.toml") +
                      "\n[company]\nname = \"Brackwater Fabrication\"\npicture = \"marks/mark.png\"\n");
  const std::string report = folder.file("r.pdf");
  const Ran ran = run_soakwright({"check", "--job", job, "--report", report});
  INFO(ran.err);
  REQUIRE(ran.exit_code == 0);
  const TemporaryFolder out;
  CHECK(detached_from(report, out) ==
        std::vector<std::string>{"d3-n2.csv", "job.toml", "mark.png", "procedure.toml", "result.json"});
  CHECK(text_of(out.file("mark.png")) == png);
  const Ran verified = run_soakwright({"verify", report});
  INFO(verified.out << verified.err);
  CHECK(verified.exit_code == 2);
  CHECK_THAT(verified.out, Contains("gives these pages again, byte for byte"));
}

TEST_CASE("dates are written and read as PDF has them") {
  // ISO 32000-1, 7.9.4; the moments by `date -u -d @N`.
  CHECK(evidence::pdf_date(0).text == "D:19700101000000Z");
  CHECK(evidence::pdf_date(1'933'545'600).text == "D:20310410000000Z");
  CHECK(evidence::unix_time(evidence::pdf_date(1'933'545'661)) == 1'933'545'661);
  for (const char* wrong :
       {"D:20310410000000", "D:20311310000000Z", "20310410000000Z", "D:20310410000000+", ""})
    CHECK_FALSE(evidence::unix_time(evidence::PdfValue::of_bytes(wrong)));
}
