// SPDX-License-Identifier: GPL-3.0-or-later
// Every folder of tests/cases/evaluation: `soakwright check` gives the answers of its expected.json.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using nlohmann::json;

namespace {

constexpr double kTime_s = 0.6;
constexpr double kRate = 0.02;
constexpr double kTemperature = 0.01;

std::vector<fs::path> case_folders() {
  std::vector<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(source_file("tests/cases/evaluation")))
    if (entry.is_directory()) folders.push_back(entry.path());
  std::sort(folders.begin(), folders.end());
  return folders;
}

Ran checked(const fs::path& folder) {
  std::vector<std::string> arguments{"check",       (folder / "record.csv").string(),
                                     "--procedure", (folder / "procedure.toml").string(),
                                     "--json",      "-"};
  if (fs::exists(folder / "job.toml")) {
    arguments.emplace_back("--job");
    arguments.push_back((folder / "job.toml").string());
  }
  return run_soakwright(arguments);
}

json result_of(const fs::path& folder) {
  const Ran ran = checked(folder);
  INFO(ran.err);
  REQUIRE(ran.exit_code <= 2);
  return json::parse(ran.out);
}

/// Refused with exit 65 and a message that says `words`.
void check_refused(const fs::path& folder, const std::string& words) {
  const Ran ran = checked(folder);
  CHECK(ran.exit_code == 65);
  CHECK_THAT(ran.err, Catch::Contains(words));
}

/// The entry of `list` whose `key` is `value`; null where there is none.
json entry_of(const json& list, const char* key, const json& value) {
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const json& entry) { return entry[key] == value; });
  return found == list.end() ? json() : *found;
}

void check_near(const json& found, const json& expected, double tolerance) {
  INFO("found " << found << ", expected " << expected << " to " << tolerance);
  if (!expected.is_number()) {
    CHECK(found == expected);
  } else {
    REQUIRE(found.is_number());
    CHECK(std::fabs(found.get<double>() - expected.get<double>()) <= tolerance);
  }
}

void check_span(const json& from, const json& to, const json& expected) {
  if (expected.is_null() || (expected.is_array() && expected.empty())) {
    CHECK(from.is_null());
    return;
  }
  check_near(from, expected[0], kTime_s);
  check_near(to, expected[1], kTime_s);
}

double tolerance_of(const json& requirement) {
  if (requirement["unit"] == "C/h") return kRate;
  return requirement["unit"] == "s" ? kTime_s : kTemperature;
}

/// Time known to be out within a hold's span: a requirement where the procedure limits it, else the notes.
double excursion_time_s(const json& result, const std::string& stage) {
  const json limited = entry_of(result["requirements"], "id", stage + ".excursion-time");
  if (limited.is_object()) return limited["measured"];
  double sum = 0.0;
  for (const json& finding : result["findings"])
    if (finding["requirement"] == stage + ".excursion-time")
      sum += finding["to_s"].get<double>() - finding["from_s"].get<double>();
  return sum;
}

void check_answer(const json& result, const std::string& id, const json& answer) {
  const std::string stage_name = id.substr(0, id.find('.'));
  if (id.ends_with(".excursion_time_s")) {
    check_near(excursion_time_s(result, stage_name), answer, kTime_s);
    return;
  }
  const json requirement = entry_of(result["requirements"], "id", id);
  if (answer.is_null()) {  // no such requirement
    CHECK(requirement.is_null());
    return;
  }
  const json stage = stage_name.starts_with("stage-")
                         ? entry_of(result["stages"], "index", std::stoi(stage_name.substr(6)))
                         : json();
  for (const auto& [key, expected] : answer.items()) {
    INFO(key);
    if (key == "continuous_hold_s") {
      REQUIRE(stage.is_object());
      const json& core = stage["continuous"];
      check_span(core.is_null() ? json() : core[0], core.is_null() ? json() : core[1], expected);
    } else if (key == "hold_period_s") {
      REQUIRE(stage.is_object());
      check_span(stage["start_s"], stage["end_s"], expected);
    } else {
      REQUIRE(requirement.is_object());
      if (key == "certain_s" || key == "possible_s")
        check_near(requirement[key.substr(0, key.size() - 2)], expected, kTime_s);
      else if (key == "at_s")
        check_near(requirement["at_s"], expected, kTime_s);
      else if (key == "measured")
        check_near(requirement["measured"], expected, tolerance_of(requirement));
      else if (key == "standard_error")
        check_near(requirement["standard_error"], expected, kRate);
      else
        CHECK(requirement.at(key) == expected);
    }
  }
}

}  // namespace

TEST_CASE("every case of tests/cases/evaluation gets its answers") {
  const auto folders = case_folders();
  REQUIRE(folders.size() >= 11);
  for (const fs::path& folder : folders) {
    DYNAMIC_SECTION(folder.filename().string()) {
      REQUIRE(fs::exists(folder / "expected.json"));
      const json expected = json::parse(text_of(folder / "expected.json"));
      REQUIRE(!expected.at("why").get<std::string>().empty());
      if (expected.contains("error")) {
        check_refused(folder, expected["error"]);
        continue;
      }
      REQUIRE(!expected.at("answers").empty());
      const json result = result_of(folder);
      if (expected.contains("verdict")) CHECK(result["verdict"] == expected["verdict"]);
      for (const auto& [id, answer] : expected["answers"].items()) {
        INFO(id << ": " << expected["why"]);
        check_answer(result, id, answer);
      }
    }
  }
}
