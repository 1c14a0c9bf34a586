// SPDX-License-Identifier: GPL-3.0-or-later
// What a job says about times, in the notation of the log: where it lands on the record's axis.
#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/record/record_file.h"
#include "core/wording/notice_words.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

const std::string kHead = "Time,TC1 (°C)\n";
/// 23:58 to 00:03, a row each minute.
const std::string kTimeOfDay =
    kHead + "23:58:00,20\n23:59:00,21\n00:00:00,22\n00:01:00,23\n00:02:00,24\n00:03:00,25\n";
const std::string kElapsed = "Time (s),TC1 (°C)\n747,20\n807,21\n867,22\n927,23\n987,24\n1047,25\n";
const std::string kDated = kHead +
                           "2031-10-26 02:00:00,20\n2031-10-26 02:20:00,21\n2031-10-26 02:40:00,22\n"
                           "2031-10-26 02:00:00,23\n2031-10-26 02:20:00,24\n2031-10-26 02:40:00,25\n"
                           "2031-10-26 03:00:00,26\n";

struct Read {
  std::shared_ptr<const Record> record;
  Problem problem;
};

Read read(const std::string& log, const std::string& keys) {
  const WrittenLog written{log};
  const auto job = parse_job("soakwright = \"job 1\"\n" + keys, "job.toml");
  if (!job) return {nullptr, job.problems().front()};
  auto record = read_record(written.path(), &job.value());
  if (!record) return {nullptr, record.problems().front()};
  return {record.value(), {}};
}

std::string exclude(const std::string& from, const std::string& to) {
  return "[[exclude]]\ncolumn = \"TC1\"\nfrom = " + from + (to.empty() ? "" : "\nto = " + to) +
         "\nreason = \"off the work\"\n";
}

std::string notices(const Record& record, const std::string& code) {
  std::string all;
  for (const Notice& notice : record.notices)
    if (notice.code == code) all += notice_text(notice, record) + "\n";
  return all;
}

}  // namespace

TEST_CASE("a moment of the job is read in the log's own notation, or as seconds from its first sample") {
  struct Case {
    const char* why;
    const std::string& log;
    const char* from;
    const char* to;
    double from_s, to_s;
  };
  const Case cases[] = {
      {"time of day", kTimeOfDay, "\"23:59:00\"", "\"+1 d 00:01:00\"", 60, 180},
      {"time of day without seconds", kTimeOfDay, "\"23:59\"", "\"+1 d 00:01\"", 60, 180},
      {"seconds", kTimeOfDay, "60", "180.5", 60, 180.5},
      {"elapsed time counts from the log's own zero", kElapsed, "\"0:13:27\"", "\"0:15:27\"", 60, 180},
      {"seconds count from the first sample", kElapsed, "60", "180", 60, 180},
      {"no end: to the end of the record", kElapsed, "\"0:13:27\"", "", 60, 300},
      {"date and time, once in the log", kDated, "\"2031-10-26 03:00\"", "", 7200, 7200},
      {"date and time, twice in the log: the first behind the start", kDated, "3600", "\"2031-10-26 02:20\"",
       3600, 4800},
  };
  for (const Case& c : cases) {
    INFO(c.why);
    const Read found = read(c.log, exclude(c.from, c.to));
    INFO(found.problem.text());
    REQUIRE(found.record);
    REQUIRE(found.record->exclusions.size() == 1);
    CHECK(found.record->exclusions[0].from_s == c.from_s);
    CHECK(found.record->exclusions[0].to_s == c.to_s);
    CHECK(notices(*found.record, "outside-record").empty());
  }
}

TEST_CASE("a time that the recorder showed twice is taken as the first, with a notice that says so") {
  const Read found = read(kDated, "[[remark]]\nat = \"2031-10-26 02:20\"\ntext = \"power cut\"\n");
  REQUIRE(found.record);
  CHECK(found.record->remarks.at(0).at_s == 1200.0);
  CHECK_THAT(notices(*found.record, "moment-twice"), Catch::Contains("2 times") && Catch::Contains("20 min"));
}

TEST_CASE("a moment in another notation than the log's is refused, and the right one is named") {
  struct Case {
    const std::string& log;
    const char* from;
    const char* what;
    const char* help;
  };
  const Case cases[] = {
      {kTimeOfDay, "\"2031-04-02 23:59\"", "the log has no dates", "`date`"},
      {kElapsed, "\"2031-04-02 23:59\"", "the log has no dates", "`start`"},
      {kDated, "\"02:20:00\"", "the log has dates", "\"2031-10-26 02:00:00\""},
      {kElapsed, "\"0:13\"", "without its seconds", "h:mm:ss"},
  };
  for (const Case& c : cases) {
    INFO(c.from);
    const Read found = read(c.log, exclude(c.from, ""));
    REQUIRE_FALSE(found.record);
    CHECK(found.problem.file == "job.toml");
    CHECK(found.problem.line == 2);
    CHECK_THAT(found.problem.what, Catch::Contains(c.what));
    CHECK_THAT(found.problem.help, Catch::Contains(c.help));
  }
  const Read backward = read(kTimeOfDay, exclude("\"23:59:00\"", "\"00:01:00\""));
  CHECK_FALSE(backward.record);
  CHECK_THAT(backward.problem.text(), Catch::Contains("not after"));
}

TEST_CASE("an exclusion outside the record is an error; partly outside it is cut, with a notice") {
  for (const auto& [from, to] : {std::pair{"-100", "-1"}, {"301", "400"}, {"\"0:10:00\"", "\"0:12:26\""}}) {
    INFO(from);
    const Read found = read(kElapsed, exclude(from, to));
    REQUIRE_FALSE(found.record);
    CHECK(found.problem.line == 2);
    CHECK_THAT(found.problem.what, Catch::Contains("the exclusion of TC1 lies outside the record, which runs "
                                                   "from 0:12:27 to 0:17:27"));
  }
  CHECK_FALSE(read(kElapsed, exclude("300.5", "")).record);
  const Read touches = read(kElapsed, exclude("300", "300"));
  REQUIRE(touches.record);
  CHECK(notices(*touches.record, "outside-record").empty());
  const Read cut = read(kElapsed, exclude("-60", "\"0:13:27\""));
  REQUIRE(cut.record);
  CHECK(cut.record->exclusions.at(0).from_s == 0.0);
  CHECK(cut.record->exclusions.at(0).to_s == 60.0);
  CHECK_THAT(notices(*cut.record, "outside-record"),
             Catch::Contains("line 2") && Catch::Contains("from 0:12:27 to 0:13:27"));
  CHECK(read(kElapsed, exclude("60", "301")).record->exclusions.at(0).to_s == 300.0);
}

TEST_CASE("a remark or a time range outside the record is an error, a period a notice") {
  const Read remark = read(kElapsed, "[[remark]]\nat = 301\ntext = \"power cut\"\n");
  CHECK_FALSE(remark.record);
  CHECK_THAT(remark.problem.what, Catch::Contains("the remark lies outside the record"));
  const Read range = read(kElapsed, "[time_range]\nfrom = 400\nto = 500\n");
  CHECK_FALSE(range.record);
  CHECK_THAT(range.problem.what, Catch::Contains("[time_range] lies outside the record"));
  const Read longer = read(kElapsed, "[time_range]\nfrom = 60\nto = 500\n");
  REQUIRE(longer.record);
  CHECK(longer.record->first_row == 1);
  CHECK(longer.record->end_row == 6);
  CHECK_THAT(notices(*longer.record, "outside-record"), Catch::Contains("[time_range] reaches beyond"));

  const Read period = read(kElapsed, "[[period]]\nname = \"welding\"\nfrom = 400\nto = 500\n");
  REQUIRE(period.record);
  CHECK(period.record->periods.at(0).from_s == 400.0);
  CHECK_THAT(notices(*period.record, "outside-record"), Catch::Contains("\"welding\" lies outside"));
  const Read partly = read(kElapsed, "[[period]]\nname = \"welding\"\nfrom = 60\nto = 500\n");
  REQUIRE(partly.record);
  CHECK(partly.record->periods.at(0).to_s == 500.0);
  CHECK_THAT(notices(*partly.record, "outside-record"), Catch::Contains("\"welding\" reaches beyond"));
}

TEST_CASE("with the date of its first row, a log with times of day takes dates from the job") {
  const Read found = read(kTimeOfDay, "[import]\ndate = 2031-04-02\n" + exclude("\"2031-04-03 00:01\"", ""));
  INFO(found.problem.text());
  REQUIRE(found.record);
  CHECK(found.record->exclusions.at(0).from_s == 180.0);
  CHECK(found.record->moment_text(180.0) == "2031-04-03 00:01:00");
  const auto& changes = found.record->reading.changed_by_hand;
  REQUIRE(changes.size() == 1);
  CHECK(changes[0].key == "date");
  CHECK(changes[0].value == "2031-04-02");
}
