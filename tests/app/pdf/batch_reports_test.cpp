// SPDX-License-Identifier: GPL-3.0-or-later
// The reports of a batch: one for each record, under the path of its log, and of the same result.
#include <filesystem>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

struct Rack {
  TemporaryFolder folder;
  std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  std::string reports = folder.file("reports");
  std::string json = folder.file("r.jsonl");
  void add(const std::string& name, const std::string& text) const {
    fs::create_directories(fs::path(folder.file("logs/" + name)).parent_path());
    static_cast<void>(folder.with("logs/" + name, text));
  }
  [[nodiscard]] Ran run(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"batch", folder.file("logs"), "--procedure", procedure, "--json",
                                   json,    "--reports",         reports};
    words.insert(words.end(), more.begin(), more.end());
    return run_soakwright(words);
  }
  [[nodiscard]] std::vector<Json> results() const {
    std::vector<Json> lines;
    std::istringstream in(text_of(json));
    for (std::string line; std::getline(in, line);) lines.push_back(Json::parse(line));
    return lines;
  }
};

}  // namespace

TEST_CASE("each record of a batch has a report under the path of its log") {
  const Rack rack;
  rack.add("a/d3.csv", log_of_hold(70));
  rack.add("b/d3.csv", log_of_hold(50));
  rack.add("b/broken.csv", "no log\n");
  const Ran ran = rack.run();
  INFO(ran.err);
  CHECK(ran.exit_code == 1);
  const auto lines = rack.results();
  REQUIRE(lines.size() == 3);
  CHECK(lines[0]["report"] == "a/d3.csv.pdf");
  CHECK(lines[1]["report"].is_null());
  CHECK(lines[2]["report"] == "b/d3.csv.pdf");
  for (const Json& line : lines)
    if (!line["report"].is_null())
      CHECK(text_of(rack.reports + "/" + line["report"].get<std::string>()).starts_with("%PDF-"));
  CHECK_FALSE(fs::exists(rack.reports + "/b/broken.csv.pdf"));
}

TEST_CASE("a report that cannot be written is an error of its record, and its verdict stays") {
  const Rack rack;
  rack.add("a.csv", log_of_hold(70));
  rack.add("b.csv", log_of_hold(70));
  fs::create_directories(rack.reports + "/a.csv.pdf");
  const Ran ran = rack.run();
  INFO(ran.err);
  CHECK(ran.exit_code == 73);
  const auto lines = rack.results();
  REQUIRE(lines.size() == 2);
  CHECK(lines[0]["verdict"] == "met");
  CHECK(lines[0]["exit_code"] == 73);
  CHECK(lines[0]["report"].is_null());
  CHECK_THAT(lines[0]["errors"][0]["what"].get<std::string>(), Contains("the report is not made: "));
  CHECK(lines[1]["exit_code"] == 0);
}
