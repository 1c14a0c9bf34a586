// SPDX-License-Identifier: GPL-3.0-or-later
// `inspect` says of each setting whether it was found in the file or given, and names both where they clash.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using nlohmann::json;

namespace {

std::string log_of(const std::string& name) {
  return source_file("tests/cases/reading/" + name + "/log.csv");
}

}  // namespace

TEST_CASE("look prints what was found and what was given") {
  const Ran ran = run_soakwright({"inspect", log_of("dates-given"), "--dates", "dmy", "--json", "-"});
  REQUIRE(ran.exit_code == 0);
  const json reading = json::parse(ran.out)["log"]["reading"];
  CHECK(reading["encoding"] == json({{"value", "utf-8"}, {"by", "found"}}));
  CHECK(reading["delimiter"] == json({{"value", ","}, {"by", "found"}}));
  CHECK(reading["decimal"] == json({{"value", "."}, {"by", "found"}}));
  CHECK(reading["dates"] == json({{"value", "dmy"}, {"by", "given"}}));
  CHECK(reading["time"]["by"] == "found");

  const Ran page = run_soakwright({"inspect", log_of("dates-given"), "--dates", "dmy"});
  REQUIRE(page.exit_code == 0);
  CHECK(page.out.find("dmy (given)") != std::string::npos);
  CHECK(page.out.find("utf-8 (found)") != std::string::npos);
  // With no job to name the work, the heading does not repeat the log's name.
  CHECK(page.out.starts_with("Temperature record\n"));
}

TEST_CASE("a date order that is given wins over the job's, and the file's own is named where it clashes") {
  const std::string log = log_of("dates-given-against-pace");
  const std::string job = source_file("tests/cases/reading/dates-given-against-pace/job.toml");
  const Ran followed = run_soakwright({"inspect", log, "--job", job, "--json", "-"});
  REQUIRE(followed.exit_code == 0);
  const json result = json::parse(followed.out)["log"];
  CHECK(result["start"] == "2031-01-02T23:58:00");
  REQUIRE(result["notices"][0]["code"] == "given-against-found");
  const std::string text = result["notices"][0]["text"];
  CHECK(text.find("mdy") != std::string::npos);
  CHECK(text.find("dmy") != std::string::npos);

  const Ran won = run_soakwright({"inspect", log, "--job", job, "--dates", "dmy", "--json", "-"});
  REQUIRE(won.exit_code == 0);
  CHECK(json::parse(won.out)["log"]["start"] == "2031-02-01T23:58:00");

  const Ran impossible =
      run_soakwright({"inspect", log_of("error-dates-given-impossible"), "--dates", "mdy"});
  CHECK(impossible.exit_code == 65);
  CHECK(impossible.err.find("log.csv:2: ") != std::string::npos);
  CHECK(impossible.err.find("mdy") != std::string::npos);
  CHECK(impossible.err.find("dmy") != std::string::npos);
}
