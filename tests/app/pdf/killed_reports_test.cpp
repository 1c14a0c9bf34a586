// SPDX-License-Identifier: GPL-3.0-or-later
// Reports killed at random moments are the old ones or the new ones, and a batch makes the rest when it goes
// on. Common practice, no source. SOAKWRIGHT_KILLS=200 for a long run.
#include <cstdlib>
#include <filesystem>
#include <random>

#include <catch2/catch.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

namespace {

/// While it lives, reports carry one date and are the same bytes.
class FixedDate {
 public:
  FixedDate() { ::setenv("SOURCE_DATE_EPOCH", "1932800000", 1); }
  ~FixedDate() { ::unsetenv("SOURCE_DATE_EPOCH"); }
  FixedDate(const FixedDate&) = delete;
  FixedDate& operator=(const FixedDate&) = delete;
};

}  // namespace

TEST_CASE("a report that is replaced is the old one or the new one, whenever the program is killed") {
  const FixedDate date;
  const TemporaryFolder folder;
  const std::string report = folder.file("r.pdf");
  const Words words{"check",       folder.with("log.csv", log_of_hold(70)),
                    "--procedure", folder.with("p.toml", procedure_of_an_hour()),
                    "--report",    report};
  REQUIRE(run_soakwright(words).exit_code == 0);
  const std::string made = text_of(report);
  REQUIRE(made.starts_with("%PDF-"));
  std::mt19937 random(29);
  double longest = 1.0;
  int killed = 0;
  for (int trial = 0; trial < kill_count(6); ++trial) {
    static_cast<void>(folder.with("r.pdf", "old"));
    const Ran ran = run_killed(std::uniform_real_distribution<>(0.01, longest)(random), words);
    killed += ran.exit_code == kKilled ? 1 : 0;
    longest *= ran.exit_code == kKilled ? 1.2 : 0.7;
    const std::string now = text_of(report);
    INFO("trial " << trial << " ended with " << ran.exit_code << ", " << now.size() << " bytes");
    CHECK((now == made || (ran.exit_code == kKilled && now == "old")));
  }
  CHECK(killed > 0);
}

TEST_CASE("a batch with reports that is killed and resumed has every report, and each is whole") {
  const FixedDate date;
  const TemporaryFolder folder;
  fs::create_directory(folder.file("logs"));
  for (int i = 0; i < 5; ++i)
    static_cast<void>(folder.with("logs/" + std::to_string(i) + ".csv", log_of_hold(60 + i)));
  const std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  const auto words = [&](const std::string& name) {
    return Words{"batch",   folder.file("logs"),          "--procedure", procedure,
                 "--json",  folder.file(name + ".jsonl"), "--reports",   folder.file(name),
                 "--resume"};
  };
  REQUIRE(run_soakwright(words("undisturbed")).exit_code == 0);
  std::mt19937 random(31);
  double seconds = 0.3;
  int killed = 0;
  for (int trial = 0; trial < kill_count(12); ++trial) {
    const Ran ran = run_killed(seconds * std::uniform_real_distribution<>(0.5, 1.5)(random), words("killed"));
    INFO("trial " << trial << "\n" << ran.err);
    for (const auto& entry : fs::directory_iterator(folder.file("undisturbed"))) {
      const fs::path other = fs::path(folder.file("killed")) / entry.path().filename();
      if (fs::exists(other)) CHECK(text_of(other) == text_of(entry.path()));
    }
    if (ran.exit_code != kKilled) break;
    ++killed;
    seconds *= 1.3;
  }
  CHECK(killed > 0);
  REQUIRE(run_soakwright(words("killed")).exit_code == 0);
  CHECK(text_of(folder.file("killed.jsonl")) == text_of(folder.file("undisturbed.jsonl")));
  for (const auto& entry : fs::directory_iterator(folder.file("undisturbed")))
    CHECK(text_of(fs::path(folder.file("killed")) / entry.path().filename()) == text_of(entry.path()));
}
