// SPDX-License-Identifier: GPL-3.0-or-later
// Several records of one weld, as a user has them: logs, a job that names the earlier ones, a procedure.
#include <cstdio>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

/// Minute rows of one channel from 06:00: 10 K a minute up to 600, level, down; twice, so that a cold time
/// lies between. Within 590 and 620 from minute 57 to 121 and from minute 257 to 321: 64 min each.
std::string rows(int first, int end) {
  std::string text = "Time,TC1 (°C)\n";
  for (int minute = first; minute < end; ++minute) {
    const int in_cycle = minute % 200;
    const int celsius = in_cycle < 58     ? 20 + 10 * in_cycle
                        : in_cycle <= 120 ? 600
                                          : std::max(20, 600 - 10 * (in_cycle - 120));
    char stamp[40];
    std::snprintf(stamp, sizeof stamp, "2031-04-02 %02d:%02d:00,%d.0\n", 6 + minute / 60, minute % 60,
                  celsius);
    text += stamp;
  }
  return text;
}

std::string procedure(const std::string& hold_keys) {
  return "soakwright = \"procedure 1\"\nnumber = \"HTP-9\"\nunit = \"C\"\n[[stage]]\nkind = \"hold\"\nlow = "
         "590\nhigh = "
         "620\n" +
         hold_keys + "\n";
}

void write(const TemporaryFolder& files, const std::string& name, const std::string& text) {
  static_cast<void>(files.with(name, text));
}

/// A folder with day 1, day 2 and both together, and jobs for them.
class TwoDays {
 public:
  explicit TwoDays(const std::string& hold_keys = "time_min = \"2 h\"\ncount = \"accumulated\"") {
    write(files, "both.csv", rows(0, 400));
    write(files, "day-1.csv", rows(0, 180));
    write(files, "day-2.csv", rows(180, 400));
    write(files, "htp.toml", procedure(hold_keys));
    together = files.with("together.toml", job("log = \"both.csv\""));
    second = files.with("second.toml",
                        job("cycle = 2\nlog = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\""));
  }
  static std::string job(const std::string& keys) {
    return "soakwright = \"job 1\"\nweld = \"W-9\"\nprocedure = \"htp.toml\"\n" + keys + "\n";
  }
  [[nodiscard]] Ran check(const std::string& job_keys) const {
    return run_soakwright({"check", "--job", files.with("job.toml", job(job_keys)), "--json", "-"});
  }

  TemporaryFolder files;
  std::string together, second;
};

json result_of(const std::string& job) {
  return json::parse(run_soakwright({"check", "--job", job, "--json", "-"}).out);
}

}  // namespace

TEST_CASE("A record cut in two adds up to what it was in one piece") {
  const TwoDays days;
  const json whole = result_of(days.together);
  const json parts = result_of(days.second);
  const json& of_whole = whole["requirements"][0];
  const json& of_parts = parts["requirements"][0];
  CHECK(of_whole["id"] == "stage-1.hold-time");
  CHECK(of_whole["measured"].get<double>() == Approx(2 * 64 * 60).margin(1e-6));
  CHECK(of_parts["measured"].get<double>() == Approx(of_whole["measured"].get<double>()).margin(1e-6));
  CHECK(of_parts["verdict"] == "met");
  CHECK(parts["verdict"] == "met");
  REQUIRE(of_parts["cycles"].size() == 2);
  CHECK(of_parts["cycles"][0]["cycle"] == 1);
  CHECK(of_parts["cycles"][0]["certain"].get<double>() == Approx(64 * 60).margin(1e-6));
  CHECK(of_whole["cycles"].is_null());
}

TEST_CASE("Each earlier log is named and hashed in the result, in the report's words and on the terminal") {
  const TwoDays days;
  const json result = result_of(days.second);
  REQUIRE(result["previous_records"].size() == 1);
  const json& one = result["previous_records"][0];
  CHECK(one["cycle"] == 1);
  CHECK(one["file"] == "day-1.csv");
  CHECK(one["rows"] == 180);
  CHECK(one["start"] == "2031-04-02T06:00:00");
  CHECK(one["verdict"] == "not met");
  const json first =
      json::parse(run_soakwright({"inspect", days.files.file("day-1.csv"), "--json", "-"}).out);
  CHECK(one["sha256"] == first["log"]["sha256"]);
  const std::string page = run_soakwright({"check", "--job", days.second}).out;
  CHECK_THAT(page, Contains("Cycle 1, earlier"));
  CHECK_THAT(page, Contains("day-1.csv"));
  CHECK(result_of(days.together)["previous_records"].empty());
}

TEST_CASE("The sample over two days is met by both days together, and by neither alone") {
  const std::string folder = "sample-logs/w-128-over-two-days/";
  CHECK(result_of(source_file(folder + "job.toml"))["verdict"] == "met");
  CHECK(result_of(source_file(folder + "job-day-1.toml"))["verdict"] == "not met");
  const json alone =
      json::parse(run_soakwright({"check", source_file(folder + "lug-day-2.csv"), "--procedure",
                                  source_file(folder + "htp-052.toml"), "--json", "-"})
                      .out);
  CHECK(alone["verdict"] == "not met");
}

TEST_CASE("A previous record may have a job of its own") {
  const TwoDays days;
  write(days.files, "day-1.toml",
        TwoDays::job("log = \"day-1.csv\"\n[[exclude]]\ncolumn = \"TC1\"\nfrom = 0\nto = "
                     "9000\nreason = \"not on the work yet\""));
  const Ran ran =
      days.check("log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\njob = \"day-1.toml\"");
  const json result = json::parse(ran.out);
  // Excluded up to minute 150: the hold of day 1 is gone.
  CHECK(result["requirements"][0]["cycles"][0]["certain"] == 0);
  CHECK(result["requirements"][0]["cycles"][1]["cycle"] == 2);
}

TEST_CASE("Previous records that cannot be meant are refused with the line that names them") {
  const TwoDays days;
  write(days.files, "again.csv", rows(180, 400));
  write(days.files, "other.toml", "soakwright = \"job 1\"\nweld = \"W-8\"\n");
  struct Case {
    const char* keys;
    const char* said;
    int exit_code;
  };
  const Case cases[] = {
      {"log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-0.csv\"", "day-0.csv", 66},
      {"log = \"day-2.csv\"\n[[previous_record]]\nlog = \"again.csv\"",
       "again.csv has the same readings as day-2.csv", 65},
      {"log = \"day-1.csv\"\n[[previous_record]]\nlog = \"day-2.csv\"",
       "day-2.csv is not over before day-1.csv begins", 65},
      {"log = \"day-2.csv\"\n[[previous_record]]\nlog = \"both.csv\"",
       "both.csv is not over before day-2.csv begins", 65},
      {"log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\njob = \"other.toml\"",
       "this job is for weld W-8", 65},
      {"log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\njob = \"second.toml\"",
       "names previous records itself", 65},
  };
  for (const Case& c : cases) {
    CAPTURE(c.keys);
    const Ran ran = days.check(c.keys);
    CHECK(ran.exit_code == c.exit_code);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(c.said));
  }
}

TEST_CASE("A result is not written over an earlier log or its job") {
  const TwoDays days;
  write(days.files, "day-1.toml", TwoDays::job("log = \"day-1.csv\""));
  const std::string job = days.files.with(
      "with-job.toml",
      TwoDays::job("log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\njob = \"day-1.toml\""));
  for (const char* name : {"day-1.csv", "day-1.toml"}) {
    CAPTURE(name);
    const std::string before = text_of(days.files.file(name));
    const Ran ran = run_soakwright({"check", "--job", job, "--json", days.files.file(name)});
    CHECK(ran.exit_code == 64);
    CHECK_THAT(ran.err, Contains("this is a file to be read"));
    CHECK(text_of(days.files.file(name)) == before);
  }
}

TEST_CASE("The longest time and the tempering of an accumulated hold are those of all records together") {
  // At or above 590 for 64 min each day, 2 h 8 min in all.
  const auto verdict = [](const std::string& key, const std::string& id) {
    const TwoDays days("count = \"accumulated\"\n" + key);
    const json result = result_of(days.second);
    for (const json& requirement : result["requirements"])
      if (requirement["id"] == "stage-1." + id) return requirement["verdict"].get<std::string>();
    return std::string("missing");
  };
  CHECK(verdict("time_max = \"129 min\"", "hold-time-max") == "met");
  CHECK(verdict("time_max = \"127 min\"", "hold-time-max") == "not met");
  // A plateau of 62 min at 600 each, and the way there: P of one day is some 17.5, of two some 17.75.
  CHECK(verdict("tempering_min = 17.7", "tempering-min") == "met");
  CHECK(verdict("tempering_min = 17.9", "tempering-min") == "not met");
}

TEST_CASE("The verdicts of each previous record stand in the result") {
  const json result = result_of(TwoDays().second);
  const json& requirements = result["previous_records"][0]["requirements"];
  REQUIRE(requirements.size() == 2);
  CHECK(requirements[0]["id"] == "stage-1.hold-time");
  CHECK(requirements[0]["measured"].get<double>() == Approx(64 * 60).margin(1e-6));
  CHECK(requirements[0]["verdict"] == "not met");
  CHECK(requirements[1]["id"] == "stage-1.over-temperature");
}

TEST_CASE("A previous record is refused where its readings are another's or its place in time is not known") {
  const TwoDays days;
  // The same readings under another heading, and without dates.
  std::string again = rows(180, 400);
  again.insert(0, "Recorder 7\n");
  write(days.files, "again.csv", again);
  const Ran same = days.check("log = \"day-2.csv\"\n[[previous_record]]\nlog = \"again.csv\"");
  CHECK(same.exit_code == 65);
  CHECK_THAT(same.err, Contains("again.csv has the same readings as day-2.csv"));
  std::string elapsed = "Time (min),TC1 (°C)\n";
  for (int minute = 0; minute < 60; ++minute) elapsed += std::to_string(minute) + ",20.0\n";
  write(days.files, "elapsed.csv", elapsed);
  const Ran placeless = days.check("log = \"day-2.csv\"\n[[previous_record]]\nlog = \"elapsed.csv\"");
  CHECK(placeless.exit_code == 65);
  CHECK_THAT(placeless.err, Contains("elapsed.csv has no date"));
}

TEST_CASE("A job's previous record of the same cycle is an earlier part of it") {
  const TwoDays days;
  const Ran ran =
      days.check("cycle = 1\nlog = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\ncycle = 1");
  const json result = json::parse(ran.out);
  CHECK(result["verdict"] == "met");
  CHECK_THAT(result["requirements"][0]["text"].get<std::string>(),
             Contains("Cycle 1, part 1") && Contains("part 2"));
}

TEST_CASE("Confirmed readings are those of one log: a previous record without a job of its own has none") {
  // TC2 repeats TC1 in every row of both logs, TC3 does not; the job confirms TC2 for its own log.
  const TwoDays days;
  const auto three = [](int first, int end) {
    std::string text = "Time,TC1 (°C),TC2 (°C),TC3 (°C)\n";
    for (int minute = first; minute < end; ++minute) {
      const int in_cycle = minute % 200;
      const int celsius = in_cycle < 58     ? 20 + 10 * in_cycle
                          : in_cycle <= 120 ? 600
                                            : std::max(20, 600 - 10 * (in_cycle - 120));
      const int tenths = minute * 7919 % 13;
      const int other_tenths = minute * 1047 % 17;
      char row[80];
      std::snprintf(row, sizeof row, "2031-04-02 %02d:%02d:00,%d.%d,%d.%d,%d.%d\n", 6 + minute / 60,
                    minute % 60, celsius + tenths / 10, tenths % 10, celsius + tenths / 10, tenths % 10,
                    celsius + other_tenths / 10, other_tenths % 10);
      text += row;
    }
    return text;
  };
  write(days.files, "day-1.csv", three(0, 180));
  write(days.files, "day-2.csv", three(180, 400));
  const std::string keys = "log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\n";
  const std::string confirm =
      "[[confirm]]\ncolumn = \"TC2\"\nsuspect = \"copied\"\nreason = \"one junction, two channels\"\n";
  const auto certain = [&](const std::string& job_keys, std::size_t cycle) {
    const json result = json::parse(days.check(job_keys).out);
    return result["requirements"][0]["cycles"][cycle]["certain"].get<double>();
  };
  CHECK(certain(keys, 0) == 0);
  CHECK(certain(keys, 1) == 0);
  CHECK(certain(keys + confirm, 0) == 0);
  CHECK(certain(keys + confirm, 1) > 3800);
}

TEST_CASE("a previous record's own job must give what the procedure needs, as the last one's must") {
  const TwoDays days(
      "time_min = \"2 h\"\ncount = \"accumulated\"\n[evaluation]\ndecision_rule = \"guarded\"");
  const std::string thermocouple = "[[thermocouple]]\ncolumn = \"TC1\"\n";
  const std::string known = thermocouple + "type = \"K\"\ntolerance = \"2.5 C\"\n";
  const std::string keys =
      "log = \"day-2.csv\"\n[[previous_record]]\nlog = \"day-1.csv\"\njob = \"day-1.toml\"\n" + known;
  write(days.files, "day-1.toml", TwoDays::job(thermocouple));
  const Ran refused = days.check(keys);
  CHECK(refused.exit_code == 65);
  CHECK_THAT(refused.err, Contains("day-1.toml") && Contains("tolerance"));
  write(days.files, "day-1.toml", TwoDays::job(known));
  CHECK(days.check(keys).exit_code <= 2);
}
