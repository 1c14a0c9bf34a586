// SPDX-License-Identifier: GPL-3.0-or-later
// `check` with several logs: a block for each, a summary, and the worst decides.
#include <filesystem>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Words = std::vector<std::string>;

namespace {

struct Desk {
  TemporaryFolder folder;
  std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  std::string met = folder.with("a.csv", log_of_hold(70));
  std::string too_short = folder.with("b.csv", log_of_hold(50));
  std::string broken = folder.with("c.csv", "no log\n");
  [[nodiscard]] Ran check(const Words& logs, const Words& more = {}) const {
    Words words{"check", "--procedure", procedure};
    words.insert(words.end(), logs.begin(), logs.end());
    words.insert(words.end(), more.begin(), more.end());
    return run_soakwright(words);
  }
};

}  // namespace

TEST_CASE("several logs give a block each, in the order named, and a summary") {
  const Desk desk;
  const Ran ran = desk.check({desk.too_short, desk.met});
  INFO(ran.out << ran.err);
  CHECK(ran.exit_code == 1);
  const std::size_t first = ran.out.find("== " + desk.too_short), second = ran.out.find("== " + desk.met);
  REQUIRE(second != std::string::npos);
  CHECK(first < second);
  CHECK(ran.out.find("Verdict: Not met", first) < second);
  CHECK(ran.out.find("Verdict: Met", second) != std::string::npos);
  CHECK_THAT(ran.out.substr(second), Contains("2  records") && Contains("1  met") && Contains("1  not met"));
}

TEST_CASE("a log that cannot be read does not stop the others and is never passed over") {
  const Desk desk;
  const Ran ran = desk.check({desk.broken, desk.met});
  CHECK(ran.exit_code == 65);
  CHECK_THAT(ran.err, Contains(desk.broken + ":"));
  CHECK_THAT(ran.out, Contains("Verdict: Met") && Contains("1  not evaluated"));
  CHECK(desk.check({desk.broken, desk.too_short}).exit_code == 1);
}

TEST_CASE("of several logs each has the job beside it") {
  const Desk desk;
  static_cast<void>(desk.folder.with("a.toml", job_of("work = \"drum of a\"\n")));
  const Ran ran = desk.check({desk.met, desk.too_short});
  CHECK_THAT(ran.out, Contains("drum of a"));
  CHECK_THAT(desk.check({desk.met}).out, !Contains("drum of a"));
}

TEST_CASE("the results of several logs are JSON lines, those of a batch") {
  const Desk desk;
  const Ran ran = desk.check({desk.too_short, desk.met}, {"--json", "-"});
  std::istringstream in(ran.out);
  std::string first, second;
  std::getline(in, first);
  std::getline(in, second);
  CHECK(nlohmann::json::parse(first)["verdict"] == "not met");
  const Ran batch =
      run_soakwright({"batch", desk.folder.file(""), "--procedure", desk.procedure, "--json", "-"});
  CHECK_THAT(batch.out, Contains(first + "\n") && Contains(second + "\n"));
}

TEST_CASE("what is of one record alone is refused for several logs") {
  const Desk desk;
  for (const Words& option :
       {Words{"--job", "j.toml"}, Words{"--review", "r.toml"}, Words{"--report", "r.pdf"},
        Words{"--chart", "c.svg"}, Words{"--readings", "r.csv"}}) {
    const Ran ran = desk.check({desk.met, desk.too_short}, option);
    INFO(ran.err);
    CHECK(ran.exit_code == 64);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(option.front() + " is for one log"));
  }
}

TEST_CASE("an output that is one of the logs is refused") {
  const Desk desk;
  const Ran ran = desk.check({desk.met, desk.too_short}, {"--json", desk.too_short});
  CHECK(ran.exit_code == 64);
  CHECK(text_of(desk.too_short) == log_of_hold(50));
}
