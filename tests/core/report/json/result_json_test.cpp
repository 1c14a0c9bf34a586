// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/result_json.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace soakwright;
using Json = nlohmann::ordered_json;

namespace {

std::shared_ptr<Record> a_record(bool with_clock) {
  auto record = std::make_shared<Record>();
  record->file = "d3-n2.csv";
  record->sha256 = "ab12";
  record->bytes = 1234;
  record->reading.encoding = {"utf-8", SettingBy::found};
  record->reading.dates = {"dmy", SettingBy::given};
  record->reading.header_line.value = 5;
  record->reading.heading = {"Furnace \xB0 3"};
  if (with_clock) record->clock = RecorderClock::dated(LocalTime::of({2031, 4, 2}, 6, 0, 0).value());
  record->times_s = {0.0, 20.0, 40.0};
  record->interval_s = 20.0;
  record->end_row = 3;
  Channel channel;
  channel.column = 2;
  channel.name = "TC1";
  channel.unit = ChannelUnit::fahrenheit;
  channel.max_c = 611.6;
  record->channels = {channel};
  record->other_columns = {{8, "Set point", {ColumnContent::set_point}}};
  record->notices = {{"gap", 12, 1, std::nullopt, state(Sentence::gap_of_rows, BetweenStamps{1200.0})},
                     {"not-in-job", 0, 1, "TC1", state(Sentence::column_not_in_job)}};
  record->exclusions = {{0, 10.0, 20.0, "came off"}};
  return record;
}

std::shared_ptr<Course> a_course() {
  auto course = std::make_shared<Course>();
  course->phases = {{Phase::Kind::heat, 0.0, 20.0, 100.0, 300.0, 5.0}};
  course->suspects = {{0, Suspect::Code::detached, 10.0, 20.0, {.kind = SuspectEvidence::Kind::sudden_step}}};
  return course;
}

std::shared_ptr<Verdicts> some_verdicts() {
  auto verdicts = std::make_shared<Verdicts>();
  verdicts->replaced = {{"TC1", "TC9", 10.0, std::nullopt}};
  verdicts->welds = {{"W-117", 38.0, Verdict::not_met}};
  StageCourse stage;
  stage.weld = "W-117";
  stage.number = 2;
  stage.kind = "hold";
  stage.start_s = 10.0;
  stage.continuous = TimeSpan{10.0, 17.5};
  stage.in_range = {{10.0, 17.5}, {18.0, 20.0}};
  stage.channels = {{"TC1", 10.0, std::nullopt, 590.0, 611.6, 600.25}};
  verdicts->stages = {stage};
  verdicts->tempering = {{"W-117", "TC1", 17.9, 590.0, 1.25},
                         {"W-117", "TC2", std::nullopt, 590.0, std::nullopt}};
  Requirement rate;
  rate.id = "stage-1.heating-rate";
  rate.kind = RequirementKind::heating_rate;
  rate.stage = 1;
  rate.weld = "W-117";
  rate.limit = 144.7;
  rate.measured = 139.2;
  rate.margin = 5.5;
  rate.verdict = Verdict::met;
  rate.channel = "TC1";
  rate.at_s = 12.5;
  rate.overall = {{"TC1", 118.0}};
  rate.alternatives.rates = {
      {5, 151.0, "TC1", 0.0, 300.0, Verdict::not_met},
      {15, std::nullopt, std::nullopt, std::nullopt, std::nullopt, Verdict::inconclusive}};
  Requirement hold;
  hold.id = "stage-2.hold-time";
  hold.kind = RequirementKind::hold_time;
  hold.limit = 5700.0;
  hold.verdict = Verdict::not_met;
  hold.certain_s = 7.5;
  verdicts->requirements = {rate, hold};
  Finding dip;
  dip.requirement = "stage-2.hold-time";
  dip.weld = "W-117";
  dip.kind = Finding::Kind::not_met;
  dip.channel = "TC1";
  dip.from_s = 17.5;
  dip.to_s = 18.0;
  dip.extreme = Temperature::of_celsius(589.0);
  verdicts->findings = {dip};
  verdicts->verdict = Verdict::not_met;
  return verdicts;
}

std::shared_ptr<Procedure> a_procedure() {
  auto procedure = std::make_shared<Procedure>();
  procedure->number = "HTP-021";
  procedure->revision = "C";
  procedure->sha256 = "cd34";
  return procedure;
}

std::shared_ptr<Job> a_job() {
  auto job = std::make_shared<Job>();
  job->work = "Steam drum D-3";
  job->sha256 = "ef56";
  return job;
}

Analysis evaluated(bool with_clock) {
  return {a_record(with_clock), a_course(), a_job(), a_procedure(), nullptr, some_verdicts()};
}

std::vector<std::string> keys(const Json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items())
    if (!object.contains(name + "_s")) names.push_back(name);
  return names;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("the result has its keys in their order") {
  const Json result = Json::parse(result_json(evaluated(false)));
  CHECK(keys(result) ==
        Names{"soakwright",      "version",  "log",       "procedure", "job",          "previous_records",
              "replaced",        "excluded", "confirmed", "phases",    "suspects",     "welds",
              "budget",          "stages",   "tempering", "heat",      "requirements", "findings",
              "first_deviation", "verdict"});
  CHECK(keys(result["log"]) == Names{"file", "sha256", "bytes", "rows", "start", "first_s", "last_s",
                                     "duration_s", "interval_s", "reading", "channels", "other_columns",
                                     "notices"});
  CHECK(keys(result["log"]["reading"]) == Names{"encoding", "delimiter", "decimal", "dates", "time",
                                                "time_column", "header_line", "header_line_by", "heading",
                                                "changed_by_hand"});
  CHECK(keys(result["log"]["reading"]["dates"]) == Names{"value", "by"});
  CHECK(keys(result["log"]["channels"][0]) == Names{"column", "name", "unit", "role", "zone", "weld",
                                                    "evaluated", "samples", "missing", "min", "max"});
  CHECK(keys(result["log"]["other_columns"][0]) == Names{"column", "name", "why"});
  CHECK(keys(result["log"]["notices"][0]) == Names{"code", "line", "count", "channel", "text"});
  CHECK(keys(result["procedure"]) == Names{"number", "revision", "title", "sha256", "decision_rule", "source",
                                           "edition", "clause", "flag", "limits_from", "stages"});
  CHECK(keys(result["job"]) == Names{"work", "sha256"});
  CHECK(keys(result["replaced"][0]) == Names{"channel", "by", "from_s", "step"});
  CHECK(keys(result["excluded"][0]) == Names{"channel", "from_s", "to_s", "reason"});
  CHECK(keys(result["phases"][0]) == Names{"kind", "start_s", "end_s", "rate", "level", "spread_max"});
  CHECK(keys(result["suspects"][0]) == Names{"channel", "code", "from_s", "to_s", "text"});
  CHECK(keys(result["welds"][0]) == Names{"number", "thickness_mm", "verdict"});
  CHECK(keys(result["stages"][0]) == Names{"weld", "index", "kind", "start_s", "end_s", "continuous",
                                           "in_range", "edge_crossings", "channels", "by_excursion_allowed"});
  CHECK(keys(result["stages"][0]["channels"][0]) == Names{"name", "in_s", "out_s", "min", "max", "mean"});
  CHECK(keys(result["tempering"][0]) == Names{"weld", "channel", "parameter", "hours_at", "hours"});
  CHECK(result["tempering"][0]["hours"] == 1.25);
  CHECK(result["tempering"][1]["parameter"].is_null());
  CHECK(keys(result["requirements"][0]) ==
        Names{"id",       "weld",       "limit",          "unit",        "measured",
              "margin",   "verdict",    "channel",        "channel_2",   "at_s",
              "from_s",   "to_s",       "standard_error", "uncertainty", "certain",
              "possible", "started_by", "stopped_by",     "overall",     "by_window",
              "text",     "cycles",     "alternatives",   "shortfall",   "first_deviation"});
  CHECK(keys(result["findings"][0]) == Names{"requirement", "weld", "verdict", "channel", "from_s", "to_s",
                                             "extreme", "text", "explanation"});
}

TEST_CASE("where the limits come from is said of the procedure and of each stage, in words too") {
  const auto procedure = a_procedure();
  procedure->provenance = {"EN 13445-4", "2021", "10", Provenance::Flag::seen};
  procedure->stages.resize(3);
  for (std::size_t i = 0; i < 3; ++i) procedure->stages[i].number = i + 1;
  procedure->stages[1].provenance = {"PD 5500", std::nullopt, std::nullopt, Provenance::Flag::memory};
  procedure->stages[2].provenance.flag = Provenance::Flag::proposal;
  const Json result = Json::parse(
      result_json({a_record(true), a_course(), a_job(), procedure, nullptr, some_verdicts()}))["procedure"];
  CHECK(result["limits_from"] == "EN 13445-4, edition 2021, clause 10, seen in print");
  CHECK(keys(result["stages"][0]) == Names{"index", "source", "edition", "clause", "flag", "limits_from"});
  CHECK(result["stages"][0]["limits_from"].is_null());
  CHECK(result["stages"][1]["flag"] == "memory");
  CHECK(result["stages"][1]["limits_from"] == "PD 5500, from memory, check against your edition");
  CHECK(result["stages"][2]["flag"] == "proposal");
  CHECK(result["stages"][2]["limits_from"] == "proposed from a recorded cycle, not a requirement");
}

TEST_CASE("every moment has beside it what the recorder showed") {
  const Json result = Json::parse(result_json(evaluated(true)));
  CHECK(result["log"]["start"] == "2031-04-02T06:00:00");
  CHECK(result["log"]["first"] == "2031-04-02T06:00:00");
  CHECK(result["log"]["last_s"] == 40.0);
  CHECK(result["log"]["last"] == "2031-04-02T06:00:40");
  const Json& rate = result["requirements"][0];
  CHECK(rate["at_s"] == 12.5);
  CHECK(rate["at"] == "2031-04-02T06:00:12.500");
  CHECK(rate["from_s"].is_null());
  CHECK(rate["from"].is_null());
  CHECK(result["replaced"][0]["from"] == "2031-04-02T06:00:10");
  CHECK(result["excluded"][0]["to"] == "2031-04-02T06:00:20");
  CHECK(result["phases"][0]["end"] == "2031-04-02T06:00:20");
  CHECK(result["suspects"][0]["from"] == "2031-04-02T06:00:10");
  CHECK(result["stages"][0]["start"] == "2031-04-02T06:00:10");
  CHECK(result["stages"][0]["channels"][0]["in"] == "2031-04-02T06:00:10");
  CHECK(result["stages"][0]["channels"][0]["out"].is_null());
  CHECK(result["findings"][0]["to"] == "2031-04-02T06:00:18");
}

TEST_CASE("a log without dates has its own count or time of day beside every moment, and no start") {
  const Json elapsed = Json::parse(result_json(evaluated(false)));
  CHECK(elapsed["log"]["start"].is_null());
  CHECK(elapsed["log"]["last"] == "0:00:40");
  CHECK(elapsed["requirements"][0]["at"] == "0:00:12.500");
  CHECK(elapsed["requirements"][0]["from"].is_null());
  auto record = a_record(false);
  record->clock = RecorderClock{RecorderClock::Kind::time_of_day, 86'395 * kNanosecondsPerSecond};
  const Json of_day =
      Json::parse(result_json({record, a_course(), a_job(), a_procedure(), nullptr, some_verdicts()}));
  CHECK(of_day["log"]["start"].is_null());
  CHECK(of_day["log"]["first"] == "23:59:55");
  CHECK(of_day["excluded"][0]["to"] == "+1 d 00:00:15");
}

TEST_CASE("the result says what was found in its own words and units") {
  const Json result = Json::parse(result_json(evaluated(true)));
  CHECK(result["soakwright"] == "result 1");
  CHECK(result["log"]["reading"]["dates"] == Json({{"value", "dmy"}, {"by", "given"}}));
  CHECK(result["log"]["reading"]["delimiter"]["value"].is_null());
  CHECK(result["log"]["reading"]["heading"][0] == "Furnace \xEF\xBF\xBD 3");
  CHECK(result["log"]["channels"][0]["unit"] == "F");
  CHECK(result["log"]["channels"][0]["evaluated"] == true);
  CHECK(result["log"]["channels"][0]["min"].is_null());
  CHECK(result["log"]["notices"][0]["line"] == 12);
  CHECK(result["log"]["notices"][0]["text"] ==
        "One step between rows is longer than three intervals; the longest is 20 min.");
  CHECK(result["log"]["other_columns"][0]["why"] == "set point");
  CHECK(result["log"]["notices"][1]["line"].is_null());
  CHECK(result["excluded"][0]["channel"] == "TC1");
  CHECK(result["suspects"][0]["code"] == "detached");
  CHECK(result["welds"][0]["verdict"] == "not met");
  CHECK(result["stages"][0]["continuous"] == Json({10.0, 17.5}));
  CHECK(result["stages"][0]["in_range"] == Json({{10.0, 17.5}, {18.0, 20.0}}));
  CHECK(result["requirements"][0]["unit"] == "C/h");
  CHECK(result["requirements"][0]["overall"] == Json({{"TC1", 118.0}}));
  CHECK(result["requirements"][0]["by_window"] == Json({{"5 min", 151.0}, {"15 min", nullptr}}));
  CHECK(result["requirements"][1]["certain"] == 7.5);
  CHECK(result["requirements"][1]["possible"].is_null());
  CHECK(result["requirements"][1]["overall"].is_null());
  CHECK(result["findings"][0]["verdict"] == "not met");
  CHECK(result["verdict"] == "not met");
}

TEST_CASE("where nothing is specified, procedure and verdict are null and nothing is evaluated") {
  const Json result =
      Json::parse(result_json({a_record(true), a_course(), nullptr, nullptr, nullptr, nullptr}));
  CHECK(result["procedure"].is_null());
  CHECK(result["job"].is_null());
  CHECK(result["verdict"].is_null());
  for (const char* key : {"replaced", "welds", "stages", "requirements", "findings"}) {
    CHECK(result[key].is_array());
    CHECK(result[key].empty());
  }
  CHECK(result["phases"].size() == 1);
}

TEST_CASE("the same analysis gives the same bytes") {
  CHECK(result_json(evaluated(true)) == result_json(evaluated(true)));
}
