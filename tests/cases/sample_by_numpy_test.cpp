// SPDX-License-Identifier: GPL-3.0-or-later
// Crossings, hold time and the steepest rolling slope of a sample log against numpy and scipy (Debian), whose
// figures sample_by_numpy.py works out by the definitions and keeps in sample_by_numpy.json.
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

TEST_CASE(
    "The clock starts when the last thermocouple is in tolerance and stops when the first leaves, as numpy "
    "has it") {
  // The rule itself: common practice, no source.
  const std::string top = SOAKWRIGHT_SOURCE_DIR;
  std::ifstream file(top + "/tests/cases/sample_by_numpy.json");
  const auto expected = nlohmann::json::parse(file);
  const Ran ran =
      run_soakwright({"check", "--job", top + "/sample-logs/w-117-stress-relief/job.toml", "--json", "-"});
  REQUIRE(ran.exit_code == 0);
  const auto result = nlohmann::json::parse(ran.out);

  std::size_t compared = 0;
  for (const auto& stage : result["stages"]) {
    if (stage["kind"] != "hold") continue;
    for (const auto& channel : stage["channels"]) {
      // The job gives some channels a longer name that begins with the column's.
      const std::string column = channel["name"].get<std::string>().substr(0, 3);
      CAPTURE(column);
      CHECK(channel["in_s"].get<double>() ==
            Approx(expected["came_in_s"][column].get<double>()).epsilon(1e-9));
      CHECK(channel["out_s"].get<double>() == Approx(expected["left_s"][column].get<double>()).epsilon(1e-9));
      ++compared;
    }
  }
  CHECK(compared == expected["came_in_s"].size());
  for (const auto& requirement : result["requirements"]) {
    if (requirement["id"] == "stage-2.hold-time")
      CHECK(requirement["measured"].get<double>() ==
            Approx(expected["hold_time_s"].get<double>()).epsilon(1e-9));
    if (requirement["id"] != "stage-1.heating-rate") continue;
    CHECK(requirement["measured"].get<double>() ==
          Approx(expected["heating_rate"].get<double>()).epsilon(1e-9));
    CHECK(requirement["channel"] == expected["channel"]);
    CHECK(requirement["at_s"] == expected["at_s"]);
  }
}
