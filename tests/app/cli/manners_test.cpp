// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of requirements and readings, explanations, silence, and import settings as options.
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Words = std::vector<std::string>;
using Json = nlohmann::json;

namespace {

const std::string good_job = source_file("sample-logs/w-117-stress-relief/job.toml");
const std::string late_job = source_file("sample-logs/w-118-late-and-dipping/job.toml");

std::vector<std::string> lines_of_text(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// How `inspect` read it, with these options.
Json read_with(const std::string& log, const Words& options) {
  Words words{"inspect", log, "--json", "-"};
  words.insert(words.end(), options.begin(), options.end());
  const Ran ran = run_soakwright(words);
  INFO(Catch::rangeToString(options) << ran.err);
  REQUIRE(ran.exit_code == 0);
  return Json::parse(ran.out)["log"];
}

}  // namespace

TEST_CASE("the table of requirements has the figures of the result, one line each") {
  const Ran csv = run_soakwright({"check", "--job", late_job, "--csv", "-"});
  const Json result = Json::parse(run_soakwright({"check", "--job", late_job, "--json", "-"}).out);
  const auto lines = lines_of_text(csv.out);
  REQUIRE(lines.size() == result["requirements"].size() + 1);
  CHECK_THAT(lines[0], Contains("log,weld,requirement,limit,unit,measured,margin,verdict,"));
  for (std::size_t i = 0; i < result["requirements"].size(); ++i) {
    const Json& one = result["requirements"][i];
    INFO(lines[i + 1]);
    CHECK_THAT(lines[i + 1], Contains("," + one["id"].get<std::string>() + "," + one["limit"].dump() + "," +
                                      one["unit"].get<std::string>() + "," + one["measured"].dump() + ","));
  }
  CHECK(csv.exit_code == 1);
}

TEST_CASE("readings are written as they were read, and read again are the same") {
  const TemporaryFolder folder;
  const std::string log = folder.with("a.csv",
                                      "Time,TC1 (F),TC2 (C)\n2031-04-02 06:00:00,68.0,20.1\n"
                                      "2031-04-02 06:00:30,,20.2\n2031-04-02 06:01:00.5,212.0,-5.0\n");
  const Ran ran = run_soakwright({"inspect", log, "--readings", "-"});
  CHECK(ran.out ==
        "Elapsed (s),Moment,TC1 (C),TC2 (C)\n0,2031-04-02 06:00:00,20,20.1\n30,2031-04-02 06:00:30,,20.2\n"
        "60.5,2031-04-02 06:01:00.500,100,-5\n");
  const std::string out = folder.file("out.csv");
  CHECK(run_soakwright({"check", "--job", good_job, "--readings", out, "--quiet"}).exit_code == 0);
  const Json before = Json::parse(run_soakwright({"inspect", "--job", good_job, "--json", "-"}).out)["log"];
  const Json after = read_with(out, {"--time-column", "Elapsed"});
  CHECK(after["rows"] == before["rows"]);
  CHECK(after["channels"][0]["max"] == before["channels"][0]["max"]);
}

TEST_CASE("a quiet run says nothing and answers by its exit code; errors are said") {
  const Ran quiet = run_soakwright({"check", "--job", late_job, "--quiet"});
  CHECK(quiet.exit_code == 1);
  CHECK(quiet.out.empty());
  CHECK(quiet.err.empty());
  CHECK(run_soakwright({"inspect", "--job", good_job, "--quiet"}).out.empty());
  CHECK_THAT(run_soakwright({"inspect", "no-log.csv", "--quiet"}).err,
             Contains("no-log.csv: cannot be opened"));
  const TemporaryFolder folder;
  const std::string log = folder.with("a.csv", log_of_hold(70));
  const Ran batch = run_soakwright(
      {"batch", folder.file(""), "--procedure", folder.with("p.toml", procedure_of_an_hour()), "--quiet"});
  CHECK(batch.exit_code == 0);
  CHECK(batch.out.empty());
  CHECK(batch.err.empty());
}

TEST_CASE("explanations are printed where they are asked for") {
  const std::string plain = run_soakwright({"check", "--job", late_job}).out;
  const std::string explained = run_soakwright({"check", "--job", late_job, "--explain"}).out;
  CHECK_THAT(plain, !Contains("Usual causes"));
  CHECK_THAT(explained, Contains("Explanations") && Contains("Why") && Contains("Usual causes") &&
                            Contains("Check first"));
  const Json result = Json::parse(run_soakwright({"check", "--job", late_job, "--json", "-"}).out);
  const std::string why = result["findings"][0]["explanation"]["why"];
  CHECK_THAT(explained, Contains(why.substr(0, 30)));
}

TEST_CASE("suspect thermocouples and file warnings stand on the page of check, with line and channel") {
  const TemporaryFolder folder;
  std::string text = log_of_hold(70);
  text.replace(text.find(",600.0"), 6, ",OPEN");
  const std::string log = folder.with("a.csv", text);
  const Ran ran =
      run_soakwright({"check", log, "--procedure", folder.with("p.toml", procedure_of_an_hour())});
  CHECK_THAT(ran.out, Contains("missing-text  31") && Contains("TC1"));
}

TEST_CASE("each import setting is an option, and wins over what was found and over the job") {
  const TemporaryFolder folder;
  const std::string log = folder.with("a.csv", log_of_hold(70));
  CHECK(read_with(log, {})["reading"]["delimiter"]["by"] == "found");
  const Json given =
      read_with(log, {"--delimiter", ",", "--decimal", ".", "--header-line", "1", "--encoding", "utf-8"});
  for (const char* key : {"delimiter", "decimal", "encoding"}) CHECK(given["reading"][key]["by"] == "given");
  CHECK(given["reading"]["header_line_by"] == "given");

  const std::string elapsed = folder.with("b.csv", "Clock,TC1\n0,20.1\n1,20.2\n2,20.3\n");
  const Json settled = read_with(elapsed, {"--time-column", "Clock", "--time", "elapsed min", "--start",
                                           "2031-04-02T06:00:00", "--log-unit", "F"});
  CHECK(settled["start"] == "2031-04-02T06:00:00");
  CHECK(settled["duration_s"] == 120.0);
  CHECK(settled["channels"][0]["unit"] == "F");

  const std::string clock =
      folder.with("c.csv", "Time,TC1 (C)\n06:00:00,20.1\n06:01:00,20.2\n06:02:00,20.3\n");
  CHECK(read_with(clock, {"--date", "2031-04-02"})["start"] == "2031-04-02T06:00:00");

  const std::string job =
      folder.with("j.toml", job_of("[import]\nunit = \"C\"\n[[thermocouple]]\ncolumn = \"TC1\"\n"));
  CHECK(read_with(elapsed, {"--job", job, "--log-unit", "F"})["channels"][0]["unit"] == "F");
  CHECK(read_with(elapsed, {"--job", job})["channels"][0]["unit"] == "C");

  const std::string plain = folder.with("plain.toml", job_of("[[thermocouple]]\ncolumn = \"TC1\"\n"));
  const std::string two =
      folder.with("d.csv", "Elapsed (s),TC1 (C),TC2 (C)\n0,20.1,20.0\n60,20.2,20.1\n120,20.3,20.2\n");
  CHECK(read_with(two, {"--job", plain})["channels"][1]["evaluated"] == true);
  CHECK(read_with(two, {"--job", plain, "--unlisted", "off"})["channels"][1]["evaluated"] == false);
  const std::string listed = folder.with(
      "listed.toml",
      "soakwright = \"job 1\"\n[import]\nunlisted = \"off\"\n[[thermocouple]]\ncolumn = \"TC1\"\n");
  CHECK(read_with(two, {"--job", listed})["channels"][1]["evaluated"] == false);
  CHECK(read_with(two, {"--job", listed, "--unlisted", "evaluated"})["channels"][1]["evaluated"] == true);

  std::string forward = "Time,TC1 (C)\n";
  for (int minute = 30; minute < 60; ++minute)
    forward += "2031-03-30 01:" + std::to_string(minute) + ":00,20.1\n";
  for (int minute = 0; minute < 30; ++minute)
    forward +=
        std::string("2031-03-30 03:") + (minute < 10 ? "0" : "") + std::to_string(minute) + ":00,20.2\n";
  const std::string put = folder.with("e.csv", forward);
  CHECK(read_with(put, {})["duration_s"] == 7140.0);
  CHECK(read_with(put, {"--clock-forward", "2031-03-30T02:00:00"})["duration_s"] == 3540.0);
}

TEST_CASE("an import setting that is none is refused with its option") {
  const TemporaryFolder folder;
  const std::string log = folder.with("a.csv", log_of_hold(70));
  const std::vector<std::pair<Words, const char*>> rows = {
      {{"--encoding", "latin"}, "--encoding"},
      {{"--delimiter", "comma"}, "--delimiter"},
      {{"--decimal", ";"}, "--decimal"},
      {{"--header-line", "first"}, "--header-line"},
      {{"--time", "hours"}, "--time"},
      {{"--date", "2 April"}, "--date"},
      {{"--start", "06:00"}, "--start"},
      {{"--unlisted", "no"}, "--unlisted"},
      {{"--clock-forward", "x"}, "--clock-forward"},
      {{"--log-unit", "mV"}, "--log-unit"},
      {{"--unlisted", "off"}, "--unlisted"},
  };
  for (const auto& [options, named] : rows) {
    Words words{"inspect", log};
    words.insert(words.end(), options.begin(), options.end());
    const Ran ran = run_soakwright(words);
    INFO(Catch::rangeToString(options) << "\n" << ran.out << ran.err);
    CHECK(ran.exit_code == 64);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(std::string("soakwright: ") + named + ": ") && Contains("; "));
  }
}

TEST_CASE("one result at most goes to standard output, and no two to one file") {
  for (const Words& words : {Words{"check", "--job", good_job, "--json", "-", "--csv", "-"},
                             Words{"inspect", "--job", good_job, "--json", "-", "--readings", "-"},
                             Words{"check", "--job", good_job, "--csv", "x", "--readings", "./x"}})
    CHECK(run_soakwright(words).exit_code == 64);
}
