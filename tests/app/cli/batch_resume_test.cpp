// SPDX-License-Identifier: GPL-3.0-or-later
// A batch that is stopped at any moment goes on where it was and ends with the same bytes; parts of a batch
// know nothing of each other and come to the whole.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include <catch2/catch.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Words = std::vector<std::string>;

namespace {

struct Stack {
  TemporaryFolder folder;
  std::string logs = folder.file("logs");
  std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  std::string json = folder.file("r.jsonl"), csv = folder.file("r.csv");
  explicit Stack(int count) {
    fs::create_directory(logs);
    for (int i = 0; i < count; ++i)
      static_cast<void>(
          folder.with("logs/" + std::to_string(i) + ".csv", i % 9 == 4 ? "broken" : log_of_hold(30 + i)));
  }
  [[nodiscard]] Words words(const Words& more = {}) const {
    Words all{"batch", logs, "--procedure", procedure, "--json", json, "--csv", csv};
    all.insert(all.end(), more.begin(), more.end());
    return all;
  }
  /// A limit on the size of files that lets a journal have some of the records, and not all of them.
  [[nodiscard]] std::string limit_within() const {
    Words to_output{"batch", logs, "--procedure", procedure, "--json", "-"};
    constexpr std::size_t kBlock = 512;  // of the shell's `ulimit -f` (POSIX)
    return "-f " + std::to_string(run_soakwright(to_output).out.size() / 2 / kBlock);
  }
  [[nodiscard]] std::string results() const { return text_of(json) + text_of(csv); }
};

std::string sorted_lines(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  std::sort(lines.begin(), lines.end());
  std::string sorted;
  for (const std::string& line : lines) sorted += line + "\n";
  return sorted;
}

}  // namespace

TEST_CASE("a batch killed at random moments and resumed ends with the bytes of an undisturbed one") {
  const Stack stack(80);
  const Ran whole = run_soakwright(stack.words());
  const std::string expected = stack.results();
  CHECK(whole.exit_code == 1);
  std::mt19937 random(7);
  int killed = 0, resumed = 0;
  for (int trial = 0; trial < kill_count(6); ++trial) {
    fs::remove(stack.json);
    fs::remove(stack.csv);
    Ran ran;
    double longest = 0.02;
    do {
      ran = run_killed(std::uniform_real_distribution<>(0.003, longest)(random), stack.words({"--resume"}));
      longest *= 1.5;
      if (ran.exit_code != kKilled) break;
      ++killed;
      // Nothing half under the names of the results.
      if (fs::exists(stack.json)) CHECK(expected.starts_with(text_of(stack.json)));
    } while (true);
    INFO(ran.err);
    CHECK(ran.exit_code == whole.exit_code);
    CHECK(stack.results() == expected);
    CHECK(ran.out == whole.out);
    resumed += ran.err.find("from the journal") != std::string::npos ? 1 : 0;
    CHECK(stack.folder.names() == Words{"logs", "p.toml", "r.csv", "r.jsonl"});
  }
  CHECK(killed > 0);
  CHECK(resumed > 0);
}

TEST_CASE("a record whose log changed since is evaluated again when the batch goes on") {
  const Stack stack(6);
  // A limit on the size of files ends it before its end, with some records in the journal.
  const Ran first = run_limited(stack.limit_within(), stack.words());
  REQUIRE(first.exit_code == 73);
  const std::string journal = stack.json + ".journal";
  REQUIRE(fs::exists(journal));
  static_cast<void>(stack.folder.with("logs/0.csv", log_of_hold(75)));
  const Ran again = run_soakwright(stack.words({"--resume"}));
  CHECK_THAT(again.err, Contains("from the journal"));
  const std::string resumed = stack.results();
  CHECK_FALSE(fs::exists(journal));
  static_cast<void>(run_soakwright(stack.words()));
  CHECK(stack.results() == resumed);
}

TEST_CASE("a journal of other options is not gone on with, and dropping one is said") {
  const Stack stack(6);
  REQUIRE(run_limited(stack.limit_within(), stack.words()).exit_code == 73);
  const Ran other = run_limited(stack.limit_within(), stack.words({"--resume", "--dates", "dmy"}));
  CHECK_THAT(other.err, Contains("this journal is of a batch with other options"));
  const Ran dropped = run_soakwright(stack.words());
  CHECK_THAT(dropped.err,
             Contains("an interrupted batch is started from the beginning") && !Contains("from the journal"));
  CHECK(dropped.exit_code == 1);
}

TEST_CASE("a batch that is asked to stop says how far it came, and goes on from there") {
  const Stack stack(120);
  Ran ran;
  for (const char* seconds : {"0.01", "0.02", "0.04", "0.08", "0.16", "0.32"}) {
    Words words{"/usr/bin/timeout", "--preserve-status", "-s", "INT", seconds, SOAKWRIGHT_PROGRAM};
    const Words own = stack.words({"--resume", "--workers", "1"});
    words.insert(words.end(), own.begin(), own.end());
    ran = run_words(words);
    if (ran.err.find("stopped after") != std::string::npos) break;
  }
  INFO(ran.err);
  CHECK_THAT(ran.err, Contains("stopped after ") && Contains("--resume goes on from here"));
  CHECK_FALSE(fs::exists(stack.json));
  const Ran rest = run_soakwright(stack.words({"--resume"}));
  CHECK(rest.exit_code == 1);
  const std::string resumed = stack.results();
  static_cast<void>(run_soakwright(stack.words()));
  CHECK(stack.results() == resumed);
}

TEST_CASE("the parts of a batch are the whole, each record in one of them, wherever the folder is") {
  const Stack stack(40);
  static_cast<void>(run_soakwright(stack.words()));
  const std::string whole = text_of(stack.json);
  fs::create_directory_symlink(stack.logs, stack.folder.file("elsewhere"));
  std::string parts;
  std::size_t most = 0;
  for (int part = 1; part <= 3; ++part) {
    const std::string own = std::to_string(part) + "/3";
    const Ran ran = run_soakwright(stack.words({"--part", own}));
    const std::string text = text_of(stack.json);
    most = std::max(most, text.size());
    parts += text;
    Words other{
        "batch", stack.folder.file("elsewhere"), "--procedure", stack.procedure, "--json", "-", "--part",
        own};
    const std::string there = run_soakwright(other).out;
    CHECK(std::count(there.begin(), there.end(), '\n') == std::count(text.begin(), text.end(), '\n'));
  }
  CHECK(sorted_lines(parts) == whole);
  CHECK(most < whole.size() * 2 / 3);
}

TEST_CASE("a part without logs is no error") {
  const Stack stack(1);
  int empty = 0;
  for (int part = 1; part <= 9; ++part) {
    const Ran ran = run_soakwright(stack.words({"--part", std::to_string(part) + "/9"}));
    if (ran.err.find("this part of the batch has no logs") == std::string::npos) continue;
    ++empty;
    CHECK(ran.exit_code == 0);
    CHECK(text_of(stack.json).empty());
  }
  CHECK(empty == 8);
}

TEST_CASE("GNU parallel runs the parts of a batch, and their results merge to those of the whole") {
  if (!fs::exists("/usr/bin/parallel")) {
    WARN("GNU parallel is not installed: app/install-packages test");
    return;
  }
  const Stack stack(30);
  static_cast<void>(run_soakwright(stack.words()));
  const std::string whole = text_of(stack.json);
  // As the manual has it (resources/manual/batch.md).
  const std::string script =
      "cd '" + stack.folder.file("") + "' && PARALLEL_HOME=$PWD/home /usr/bin/parallel -j 2 '" +
      SOAKWRIGHT_PROGRAM +
      " batch logs --procedure p.toml --part {}/4 --workers 1 --json part-{}.jsonl' ::: 1 2 3 4"
      " >parts.log 2>&1; cd '" +
      stack.folder.file("") + "' && LC_ALL=C sort part-*.jsonl >merged.jsonl";
  static_cast<void>(stack.folder.with("home", ""));
  fs::remove(stack.folder.file("home"));
  fs::create_directory(stack.folder.file("home"));
  CHECK(run_words({"/bin/bash", "-c", script}).exit_code == 0);
  INFO(text_of(stack.folder.file("parts.log")));
  std::string expected = whole;
  for (std::size_t at = 0; (at = expected.find(stack.logs, at)) != std::string::npos;)
    expected.replace(at, stack.logs.size(), "logs");
  CHECK(text_of(stack.folder.file("merged.jsonl")) == expected);
}
