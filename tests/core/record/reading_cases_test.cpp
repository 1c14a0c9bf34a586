// SPDX-License-Identifier: GPL-3.0-or-later
// Each folder of tests/cases/reading is a log that is awkward in one way, and what must be made of it:
// log.csv, expected.json, and job.toml where a person settled something. What is expected was worked out from
// the log and the definitions; README.md of tests/cases says what the keys mean.
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/job/job_words.h"
#include "core/record/column_kind.h"
#include "core/record/record_file.h"
#include "core/wording/column_words.h"

using namespace soakwright;
namespace fs = std::filesystem;
using nlohmann::json;

namespace {

// Far below any digit that a log prints: what is left where a unit was converted.
constexpr double kDegrees = 1e-9;
// The published points are rounded to 1 uV: half of that is 0.055 K for type B at 1000 C, the flattest used
// here.
constexpr double kEmf = 0.06;
constexpr double kSeconds = 1e-9;

std::vector<fs::path> case_folders() {
  std::set<fs::path> folders;
  for (const auto& entry : fs::directory_iterator{fs::path{SOAKWRIGHT_SOURCE_DIR} / "tests/cases/reading"})
    if (entry.is_directory()) folders.insert(entry.path());
  return {folders.begin(), folders.end()};
}

json expectation_of(const fs::path& folder) {
  std::ifstream file{folder / "expected.json"};
  REQUIRE(file.good());
  return json::parse(std::string{std::istreambuf_iterator<char>{file}, {}});
}

Result<std::shared_ptr<const Record>> read_case(const fs::path& folder) {
  const std::string log = (folder / "log.csv").string();
  if (!fs::exists(folder / "job.toml")) return read_record(log, nullptr);
  const auto job = read_job((folder / "job.toml").string());
  if (!job) return job.problems();
  return read_record(log, &job.value());
}

json channels_of(const Record& record) {
  json list = json::array();
  for (const Channel& channel : record.channels)
    list.push_back({channel.column, channel.name, std::string{kChannelUnitWords.of(channel.unit)}});
  return list;
}

json other_columns_of(const Record& record) {
  json list = json::array();
  for (const OtherColumn& other : record.other_columns)
    list.push_back({other.column, other.name, reason_text(other.why)});
  return list;
}

json notices_of(const Record& record) {
  json list = json::array();
  for (const Notice& notice : record.notices)
    list.push_back({notice.code, notice.line, notice.count, notice.channel ? json(*notice.channel) : json()});
  return list;
}

json reading_of(const Reading& reading) {
  json all{{"header_line", reading.header_line.value}, {"heading", reading.heading}};
  const auto add = [&all](const char* key, const Setting<std::string>& setting) {
    all[key] = setting.value + (setting.by == SettingBy::given ? " (given)" : "");
  };
  add("encoding", reading.encoding);
  add("delimiter", reading.delimiter);
  add("decimal", reading.decimal);
  add("dates", reading.dates);
  add("time", reading.time);
  add("time_column", reading.time_column);
  if (reading.header_line.by == SettingBy::given)
    all["header_line"] = std::to_string(reading.header_line.value) + " (given)";
  return all;
}

void check_row(const Record& record, std::size_t row, const json& expected) {
  INFO("row " << row << " of " << expected);
  REQUIRE(expected.size() == record.channels.size() + 1);
  CHECK(std::fabs(record.times_s[row] - expected[0].get<double>()) <= kSeconds);
  for (std::size_t c = 0; c < record.channels.size(); ++c) {
    const auto found = record.channels[c].readings.celsius(row);
    INFO(record.channels[c].name);
    if (!expected[c + 1].is_number()) {
      CHECK_FALSE(found.has_value());
      continue;
    }
    REQUIRE(found.has_value());
    const double tolerance = record.channels[c].unit == ChannelUnit::millivolt ? kEmf : kDegrees;
    CHECK(std::fabs(*found - expected[c + 1].get<double>()) <= tolerance);
  }
}

void check_record(const Record& record, const json& expected) {
  CHECK(channels_of(record) == expected.at("channels"));
  CHECK(other_columns_of(record) == expected.value("other_columns", json::array()));
  CHECK(notices_of(record) == expected.at("notices"));
  CHECK(json(record.breaks) == expected.value("breaks", json::array()));
  if (expected.contains("start"))
    CHECK((record.local_time(0.0) ? json(record.local_time(0.0)->iso()) : json()) == expected["start"]);
  if (expected.contains("interval_s")) CHECK(record.interval_s == expected["interval_s"].get<double>());
  const json reading = reading_of(record.reading);
  if (expected.contains("reading"))
    for (const auto& [key, value] : expected["reading"].items()) {
      INFO(key);
      CHECK(reading.at(key) == value);
    }
  if (expected.contains("printed")) {
    json printed = json::array();
    for (const double at_s : record.times_s)
      printed.push_back(record.moment_text(at_s, RecorderClock::kAsNeeded));
    CHECK(printed == expected["printed"]);
  }
  const json& rows = expected.at("rows");
  REQUIRE(record.rows() == rows.size());
  for (std::size_t row = 0; row < rows.size(); ++row) check_row(record, row, rows[row]);
}

void check_problem(const Problem& problem, const json& expected) {
  CHECK(static_cast<int>(problem.kind) == 65);
  CHECK(problem.line == expected.at("line").get<std::size_t>());
  CHECK(fs::path{problem.file}.filename() == expected.value("file", "log.csv"));
  CHECK_FALSE(problem.help.empty());
  REQUIRE_FALSE(expected.at("says").empty());
  for (const json& words : expected["says"]) {
    INFO(problem.text());
    CHECK(problem.text().find(words.get<std::string>()) != std::string::npos);
  }
}

}  // namespace

TEST_CASE("every awkward log is read as its folder says") {
  const std::set<std::string> known{"why",  "error", "channels",   "other_columns", "notices", "reading",
                                    "rows", "start", "interval_s", "breaks",        "printed"};
  const auto folders = case_folders();
  REQUIRE(folders.size() >= 80);
  for (const fs::path& folder : folders) {
    DYNAMIC_SECTION(folder.filename().string()) {
      const json expected = expectation_of(folder);
      REQUIRE_FALSE(expected.at("why").get<std::string>().empty());
      for (const auto& [key, value] : expected.items()) {
        INFO(key << " is no key of an expectation");
        CHECK(known.count(key) == 1);
      }
      const auto record = read_case(folder);
      if (expected.contains("error")) {
        REQUIRE_FALSE(record.ok());
        check_problem(record.problems().front(), expected["error"]);
      } else {
        INFO((record.ok() ? std::string{} : record.problems().front().text()));
        REQUIRE(record.ok());
        check_record(*record.value(), expected);
      }
    }
  }
}

TEST_CASE("the awkward logs show every notice and every error of the formats") {
  std::set<std::string> codes;
  std::size_t errors = 0;
  for (const fs::path& folder : case_folders()) {
    const json expected = expectation_of(folder);
    if (expected.contains("error")) ++errors;
    for (const json& notice : expected.value("notices", json::array())) codes.insert(notice[0]);
  }
  CHECK(errors >= 12);
  for (const char* code :
       {"unit-assumed",    "time-unit-assumed", "type-assumed",  "missing-text", "out-of-range",
        "digit-grouping",  "repeat-row",        "repeat-rows",   "row-order",    "repeat-time",
        "midnight",        "clock-back",        "clock-forward", "clock-fault",  "gap",
        "repeated-header", "short-row",         "long-row",      "missing-cell", "name-unclear",
        "not-in-job",      "not-evaluated"}) {
    INFO(code);
    CHECK(codes.count(code) == 1);
  }
}
