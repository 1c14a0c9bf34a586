// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/record_file.h"

#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

std::shared_ptr<const Record> record_of(const std::string& text, const Job* job = nullptr) {
  const WrittenLog log{text};
  const auto record = read_record(log.path(), job);
  if (!record) FAIL(record.problems().front().text());
  return record.value();
}

Problem problem_of(const std::string& text, const Job* job = nullptr) {
  const WrittenLog log{text};
  const auto record = read_record(log.path(), job);
  REQUIRE_FALSE(record.ok());
  return record.problems().front();
}

const Notice* notice_of(const Record& record, const std::string& code) {
  const auto found = std::find_if(record.notices.begin(), record.notices.end(),
                                  [&](const Notice& n) { return n.code == code; });
  return found == record.notices.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a plain log becomes a record") {
  const auto record = record_of(
      "Time,TC1 (°C),TC2 (°C)\n"
      "2031-04-02 06:00:00,17.9,18.0\n"
      "2031-04-02 06:00:20,18.1,\n"
      "2031-04-02 06:00:40,18.4,NaN\n");
  CHECK(record->rows() == 3);
  CHECK(record->local_time(0.0)->iso() == "2031-04-02T06:00:00");
  CHECK(record->times_s == std::vector<double>{0, 20, 40});
  CHECK(record->interval_s == 20.0);
  REQUIRE(record->channels.size() == 2);
  CHECK(record->channels[0].name == "TC1");
  CHECK(record->channels[0].column == 2);
  CHECK(record->channels[0].readings.celsius(2) == 18.4);
  CHECK(record->channels[0].min_c == 17.9);
  CHECK(record->channels[1].readings.missing() == 2);
  const Notice* text = notice_of(*record, "missing-text");
  REQUIRE(text != nullptr);
  CHECK(text->line == 4);
  CHECK(text->count == 1);
  CHECK(text->channel == "TC2");
  // sha256sum of the same bytes, by GNU coreutils.
  CHECK(record->sha256.size() == 64);
}

TEST_CASE("semicolons, decimal commas, a heading and a units row") {
  const auto record = record_of(
      "Recorder: north bay\r\nOperator: I. Okafor\r\n\r\n"
      "Date;Time;TC1;TC2;Set point;Output\r\n"
      ";;°F;°C;°C;%\r\n"
      "17.04.2031;06:00:00;64,2;18,0;20,0;0\r\n"
      "17.04.2031;06:01:00;65,1;18,5;20,5;3\r\n");
  CHECK(record->reading.delimiter.value == ";");
  CHECK(record->reading.decimal.value == ",");
  CHECK(record->reading.dates.value == "dmy");
  CHECK(record->reading.header_line.value == 4);
  CHECK(record->reading.heading == std::vector<std::string>{"Recorder: north bay", "Operator: I. Okafor"});
  REQUIRE(record->channels.size() == 2);
  CHECK(record->channels[0].unit == ChannelUnit::fahrenheit);
  CHECK(record->channels[0].readings.celsius(0) == (642 * 5 - 1600) / 90.0);
  CHECK(record->channels[1].readings.celsius(1) == 18.5);
  REQUIRE(record->other_columns.size() == 2);
  CHECK(record->other_columns[0].why == ColumnReason{ColumnContent::set_point});
  CHECK(record->other_columns[1].why == ColumnReason{ColumnContent::other_unit, "%"});
}

TEST_CASE("minute stamps are spread and a repeated row is dropped") {
  const auto record = record_of(
      "Time;TC1\n"
      "06:00;20\n06:00;21\n06:00;22\n"
      "06:01;23\n06:01;24\n06:01;25\n"
      "06:02;26\n06:02;26\n06:02;27\n");
  CHECK(record->times_s == std::vector<double>{0, 20, 40, 60, 80, 100, 120, 140});
  CHECK_FALSE(record->local_time(0.0).has_value());
  CHECK(notice_of(*record, "repeat-row")->line == 9);
  CHECK(notice_of(*record, "repeat-time")->count == 5);
}

TEST_CASE("a log that cannot be read says where and what would help") {
  CHECK(problem_of("").kind == ProblemKind::bad_input);
  CHECK(problem_of(std::string(1000, '\0')).what.find("not text") != std::string::npos);
  CHECK(problem_of(std::string(1000, '\n')).what.find("empty lines") != std::string::npos);
  const Problem commas =
      problem_of("Time,TC1,TC2\n2031-04-02 06:00:00,17,9,18,1\n2031-04-02 06:01:00,17,9,18,1\n");
  CHECK(commas.line == 2);
  CHECK(commas.what.find("decimal commas") != std::string::npos);
  const Problem dates = problem_of("Time,TC1\n02/04/2031 06:00:00,20\n02/04/2031 06:01:00,21\n");
  CHECK(dates.line == 2);
  CHECK(dates.help.find("--dates dmy") != std::string::npos);
  CHECK(problem_of("TC1,TC2\n20,21\n22,22\n21,20\n").what.find("no column holds the time") !=
        std::string::npos);
  CHECK(problem_of("Time,TC1\n2031-04-02 06:00:00,20\n").what.find("only one row") != std::string::npos);
  CHECK(read_record("/nowhere/at/all.csv", nullptr).problems().front().kind == ProblemKind::cannot_open);
  CHECK(read_record("/", nullptr).problems().front().kind == ProblemKind::cannot_open);
}

TEST_CASE("a name that the job gives must not be another thermocouple's in the log") {
  const std::string log = "Time,TC1,TC2\n2031-04-02 06:00:00,20.5,20.6\n2031-04-02 06:01:00,21.5,21.6\n";
  Job job;
  job.file = "job.toml";
  ThermocoupleEntry second;
  second.column = "TC2";
  second.name = "TC1";
  second.line = 3;
  job.thermocouples.push_back(second);
  const Problem problem = problem_of(log, &job);
  CHECK(problem.file == "job.toml");
  CHECK(problem.line == 3);
  CHECK(problem.what == "`name` \"TC1\" is the name of column 2 of the log too");
  CHECK(problem.help == "give each thermocouple a name of its own");

  // Where the other has another name by then, all can be told apart.
  ThermocoupleEntry first;
  first.column = "2";
  first.name = "TC2";
  first.line = 6;
  job.thermocouples.push_back(first);
  const auto record = record_of(log, &job);
  CHECK(record->channels[0].name == "TC2");
  CHECK(record->channels[1].name == "TC1");
}

TEST_CASE("rows before the first reading are rows, and the header stays the header") {
  const auto record = record_of(
      "Time,TC1 (°C)\n"
      "2031-04-02 06:00:00,\n"
      "2031-04-02 06:02:00,\n"
      "2031-04-02 06:04:00,95.0\n"
      "2031-04-02 06:06:00,99.6\n"
      "2031-04-02 06:08:00,101.0\n");
  REQUIRE(record->channels.size() == 1);
  CHECK(record->channels[0].name == "TC1");
  CHECK(record->rows() == 5);
  CHECK(record->channels[0].readings.missing() == 2);
}
