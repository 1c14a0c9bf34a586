// SPDX-License-Identifier: GPL-3.0-or-later
// Many records at once: one result for each, the worst decides, and nothing that cannot be read is passed
// over.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Words = std::vector<std::string>;
using Json = nlohmann::json;

namespace {

std::vector<Json> lines_of(const std::string& text) {
  std::vector<Json> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(Json::parse(line));
  return lines;
}

/// A folder with a procedure beside it.
struct Archive {
  TemporaryFolder folder;
  std::string logs = folder.file("logs");
  std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  Archive() { fs::create_directory(logs); }
  void add(const std::string& name, const std::string& text) const {
    fs::create_directories(fs::path(logs + "/" + name).parent_path());
    static_cast<void>(folder.with("logs/" + name, text));
  }
  [[nodiscard]] Ran run(Words more = {}) const {
    Words words{"batch", logs, "--procedure", procedure};
    words.insert(words.end(), more.begin(), more.end());
    return run_soakwright(words);
  }
  [[nodiscard]] std::vector<Json> results() const { return lines_of(run({"--json", "-"}).out); }
};

}  // namespace

TEST_CASE("the exit code of a batch is that of its worst record") {
  // Not met is a fact; a log that cannot be read shows nothing and is never passed over. Common practice, no
  // source.
  const std::string met = log_of_hold(70), short_hold = log_of_hold(50), no_log = "no log\n";
  std::string cut = log_of_hold(40);  // ends in the hold: inconclusive
  cut = cut.substr(0, cut.find(",580.0\n", cut.find(",600.0")));
  cut = cut.substr(0, cut.rfind('\n') + 1);
  struct Case {
    Words logs;
    int exit_code;
  };
  const std::vector<Case> rows = {
      {{met}, 0},          {{met, short_hold}, 1}, {{met, cut}, 2},          {{cut, short_hold}, 1},
      {{met, no_log}, 65}, {{cut, no_log}, 65},    {{no_log, short_hold}, 1}};
  for (const Case& row : rows) {
    const Archive archive;
    for (std::size_t i = 0; i < row.logs.size(); ++i) archive.add(std::to_string(i) + ".csv", row.logs[i]);
    const Ran ran = archive.run();
    INFO(ran.out << ran.err);
    CHECK(ran.exit_code == row.exit_code);
  }
}

TEST_CASE("a log that cannot be read is in the results with its error, and the others are evaluated") {
  const Archive archive;
  archive.add("a.csv", log_of_hold(70));
  archive.add("b.csv", "no log\n");
  archive.add("c.csv", log_of_hold(70));
  const Ran ran = archive.run({"--json", "-"});
  const auto lines = lines_of(ran.out);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0]["verdict"] == "met");
  CHECK(lines[1]["verdict"].is_null());
  CHECK(lines[1]["result"].is_null());
  CHECK(lines[1]["exit_code"] == 65);
  CHECK(lines[1]["errors"][0]["file"] == archive.logs + "/b.csv");
  CHECK(lines[2]["verdict"] == "met");
  CHECK_THAT(ran.err, Contains("soakwright: " + archive.logs + "/b.csv:"));
}

TEST_CASE("each result is the one that check gives, on one line") {
  const Archive archive;
  archive.add("a/d3.csv", log_of_hold(70));
  archive.add("b/d3.csv", log_of_hold(50));
  const auto lines = archive.results();
  REQUIRE(lines.size() == 2);
  for (const Json& line : lines) {
    const std::string log = line["log"];
    const Ran alone = run_soakwright({"check", log, "--procedure", archive.procedure, "--json", "-"});
    CHECK(line["result"] == Json::parse(alone.out));
    CHECK(line["exit_code"] == alone.exit_code);
    CHECK(line["soakwright"] == "batch 1");
  }
  CHECK(lines[0]["verdict"] == "met");
  CHECK(lines[1]["verdict"] == "not met");
}

TEST_CASE("results are the same bytes whatever the number of workers, in the order of their bytes") {
  const Archive archive;
  for (int i = 0; i < 30; ++i)
    archive.add(std::to_string(i % 7) + "/" + std::to_string(i) + ".csv", log_of_hold(40 + i * 3));
  archive.add("z \"quoted\".csv", log_of_hold(70));
  archive.add("z.csv", "broken");
  std::vector<std::string> seen;
  for (const char* workers : {"1", "2", "7", "64"}) {
    const std::string json = archive.folder.file("r.jsonl"), csv = archive.folder.file("r.csv");
    const Ran ran = archive.run({"--json", json, "--csv", csv, "--workers", workers});
    CHECK(ran.exit_code == 1);
    seen.push_back(text_of(json) + text_of(csv) + ran.out);
    CHECK(seen.back() == seen.front());
    std::istringstream in(text_of(json));
    std::string before;
    for (std::string line; std::getline(in, line); before = line) CHECK(before < line);
  }
  CHECK(archive.folder.names() == Words{"logs", "p.toml", "r.csv", "r.jsonl"});
}

TEST_CASE("a job beside a log is its job, a job elsewhere is that of the log it names") {
  const Archive archive;
  archive.add("d3.csv", log_of_hold(70, "Left"));
  archive.add("d3.toml", job_of("work = \"beside\"\n"));
  archive.add("d4.csv", log_of_hold(70));
  archive.add("nozzle.toml", job_of("work = \"named\"\nlog = \"d4.csv\"\n"));
  archive.add("d5.csv", log_of_hold(70));
  archive.add("far/d6.toml", job_of("work = \"far\"\nlog = \"../../d6.csv\"\n"));
  static_cast<void>(archive.folder.with("d6.csv", log_of_hold(50)));
  const auto lines = archive.results();
  REQUIRE(lines.size() == 4);
  CHECK(lines[0]["log"] == archive.folder.file("d6.csv"));
  CHECK(lines[0]["verdict"] == "not met");
  CHECK(lines[1]["result"]["job"]["work"] == "beside");
  CHECK(lines[2]["result"]["job"]["work"] == "named");
  CHECK(lines[3]["log"] == archive.logs + "/d5.csv");
  CHECK(lines[3]["job"].is_null());
}

TEST_CASE("two jobs of one log are two records") {
  const Archive archive;
  archive.add("d3.csv", log_of_hold(70));
  archive.add("a.toml", job_of("log = \"d3.csv\"\n"));
  archive.add("b.toml", job_of("log = \"d3.csv\"\n"));
  const auto lines = archive.results();
  REQUIRE(lines.size() == 2);
  CHECK(lines[0]["job"] == archive.logs + "/a.toml");
  CHECK(lines[1]["job"] == archive.logs + "/b.toml");
}

TEST_CASE("a job that is wrong, names no log or another log is an error and not passed over") {
  struct Case {
    const char* name;
    std::string text;
    const char* says;
  };
  const std::vector<Case> rows = {
      {"d3.toml", "soakwright = \"job 1\"\nwork = 7\n", "work"},
      {"d3.toml", "soakwright = \"job 1\"\nwork = \n", "d3.toml"},
      {"other.toml", "soakwright = \"job 1\"\nwork = \n", "other.toml"},
      {"other.toml", job_of("work = \"x\"\n"), "this job names no log"},
      {"other.toml", job_of("log = \"lost.csv\"\n"), "lost.csv: cannot be opened"},
      {"d3.toml", job_of("log = \"e4.csv\"\n"), "names another one: e4.csv"},
  };
  for (const Case& row : rows) {
    const Archive archive;
    archive.add("d3.csv", log_of_hold(70));
    archive.add("e4.csv", log_of_hold(70));
    archive.add(row.name, row.text);
    const Ran ran = archive.run({"--json", "-"});
    INFO(row.name << ": " << row.text << "\n" << ran.out << ran.err);
    CHECK((ran.exit_code == 65 || ran.exit_code == 66));
    CHECK_THAT(ran.err, Contains(row.says));
    CHECK_THAT(ran.out, Contains("\"errors\": [{"));
    const auto lines = lines_of(ran.out);
    CHECK(std::any_of(lines.begin(), lines.end(), [](const Json& line) { return line["verdict"] == "met"; }));
  }
}

TEST_CASE("a procedure is no job, nor is a file of another program") {
  const Archive archive;
  archive.add("d3.csv", log_of_hold(70));
  archive.add("d3.toml", procedure_of_an_hour("P-9"));
  archive.add("tool.toml", "[package]\nname = \"x\"\n");
  archive.add("odd.toml", "this is no TOML\n");
  const Ran ran = archive.run({"--json", "-"});
  CHECK(ran.exit_code == 0);
  const auto lines = lines_of(ran.out);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0]["job"].is_null());
  CHECK(lines[0]["result"]["procedure"]["number"] == "P-1");
  CHECK_THAT(ran.err, Contains("d3.toml: this file has the name of a log but is no job; it is not used"));
}

TEST_CASE("without --procedure each job names its own, and a log without one is an error") {
  const Archive archive;
  archive.add("a.csv", log_of_hold(70));
  archive.add("a.toml", job_of("procedure = \"../p.toml\"\n"));
  archive.add("b.csv", log_of_hold(70));
  const Ran ran = run_soakwright({"batch", archive.logs, "--json", "-"});
  const auto lines = lines_of(ran.out);
  REQUIRE(lines.size() == 2);
  CHECK(lines[0]["verdict"] == "met");
  CHECK(lines[1]["exit_code"] == 64);
  CHECK_THAT(lines[1]["errors"][0]["what"].get<std::string>(), Contains("no procedure is named"));
  CHECK(ran.exit_code == 64);
}

TEST_CASE("the record before another one is evaluated there, unless it has a job of its own") {
  const Archive archive;
  archive.add("day-1.csv", log_of_hold(70));
  archive.add("day-2.csv", log_of_hold(70));
  const std::string start = "[import]\nstart = 2031-04-0";
  archive.add("day-2.toml", job_of("[[previous_record]]\nlog = \"day-1.csv\"\njob = \"day-1-job.toml\"\n" +
                                   start + "2T06:00:00\n"));
  archive.add("day-1-job.toml", job_of(start + "1T06:00:00\n"));
  const Ran ran = archive.run({"--json", "-"});
  const auto lines = lines_of(ran.out);
  INFO(ran.err);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0]["log"] == archive.logs + "/day-2.csv");
  CHECK_THAT(ran.err, Contains("day-1.csv: this is the previous record of the job "));
}

TEST_CASE("the table has a line for each weld, with RFC 4180 quoting") {
  const Archive archive;
  archive.add(
      "d3.csv", "Elapsed (min),TC1 (C),TC2 (C)\n" + [] {
        std::istringstream one(log_of_hold(70));
        std::string text, line;
        std::getline(one, line);
        while (std::getline(one, line)) text += line + "," + line.substr(line.find(',') + 1) + "\n";
        return text;
      }());
  archive.add("d3.toml",
              job_of("work = \"drum, \\\"D-3\\\"\"\n[[weld]]\nnumber = \"W-1\"\n[[weld]]\nnumber = \"W-2\"\n"
                     "[[thermocouple]]\ncolumn = \"TC1\"\nweld = \"W-1\"\n"
                     "[[thermocouple]]\ncolumn = \"TC2\"\nweld = \"W-2\"\n"));
  const Ran ran = archive.run({"--csv", "-"});
  INFO(ran.out << ran.err);
  CHECK(ran.exit_code == 0);
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 3);
  CHECK_THAT(ran.out,
             Contains("d3.toml,\"drum, \"\"D-3\"\"\",W-1,met,met,2,2,0,0,") && Contains(",W-2,met,met,2,"));
}

TEST_CASE("wrong usage of batch answers 64, a folder that is not there 66") {
  const Archive archive;
  archive.add("a.csv", log_of_hold(70));
  struct Case {
    Words words;
    int exit_code;
    const char* says;
  };
  const std::string file = archive.logs + "/a.csv";
  const std::vector<Case> rows = {
      {{"batch"}, 64, "no folder is named"},
      {{"batch", archive.logs, "--workers", "0"}, 64, "--workers"},
      {{"batch", archive.logs, "--part", "0/3"}, 64, "--part is"},
      {{"batch", archive.logs, "--part", "4/3"}, 64, "--part is"},
      {{"batch", archive.logs, "--part", "2"}, 64, "--part is"},
      {{"batch", archive.logs, "--json", "-", "--csv", "-"}, 64, "cannot both be standard output"},
      {{"batch", archive.logs, "--json", "x", "--csv", "./x"}, 64, "named for both --json and --csv"},
      {{"batch", archive.logs, "--resume"}, 64, "--resume has nothing to go on from"},
      {{"batch", archive.logs, "--resume", "--json", "-"}, 64, "--resume has nothing to go on from"},
      {{"batch", archive.logs + "/none"}, 66, "there is no such folder"},
      {{"batch", file}, 66, "this is a file, not a folder"},
      {{"batch", archive.logs, "--csv", file}, 64, "would be written over"},
      {{"batch", archive.logs, "--procedure", archive.procedure, "--json", archive.procedure},
       64,
       "would be written over"},
      {{"batch", archive.logs, "--procedure", archive.procedure, "--json", "no-folder/x"},
       73,
       "cannot be written"},
  };
  for (const Case& row : rows) {
    const Ran ran = run_soakwright(row.words);
    INFO(Catch::rangeToString(row.words) << "\n" << ran.err);
    CHECK(ran.exit_code == row.exit_code);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(row.says));
  }
  CHECK(text_of(file) == log_of_hold(70));
}

TEST_CASE("results that cannot be written end the batch with 73") {
  const Archive archive;
  for (int i = 0; i < 5; ++i) archive.add(std::to_string(i) + ".csv", log_of_hold(70));
  CHECK(archive.run({"--json", "/dev/full"}).exit_code == 73);
  CHECK(run_soakwright({"batch", archive.logs, "--procedure", archive.procedure, "--json", "-"}, {},
                       "/dev/full")
            .exit_code == 73);
  const std::string json = archive.folder.with("r.jsonl", "old");
  const Ran limited =
      run_limited("-f 4", {"batch", archive.logs, "--procedure", archive.procedure, "--json", json});
  CHECK(limited.exit_code == 73);
  CHECK(text_of(json) == "old");
}
