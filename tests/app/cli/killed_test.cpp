// SPDX-License-Identifier: GPL-3.0-or-later
// The program killed at random moments: a file under its name is whole, and a journal loses no finished
// record that it can vouch for. Common practice, no source. SOAKWRIGHT_KILLS=1000 for a long run.
#include <algorithm>
#include <chrono>
#include <filesystem>
#include <random>

#include <catch2/catch.hpp>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

namespace {

/// What a killed run may leave beside its outputs.
bool is_part_file(const std::string& name) {
  return name.starts_with(".soakwright-") && name.ends_with(".part");
}

/// A long log, so that its result takes its time.
std::string long_log() {
  std::string text = "Elapsed (s),TC1 (C),TC2 (C)\n";
  for (int row = 0; row < 30000; ++row) {
    const int celsius = row < 6000 ? 20 + row / 10 : row < 24000 ? 600 : 600 - (row - 24000) / 12;
    text += std::to_string(10 * row) + ',' + std::to_string(celsius) + ".0," + std::to_string(celsius + 2) +
            ".5\n";
  }
  return text;
}

}  // namespace

TEST_CASE("a result that is replaced is the old one or the new one, whenever the program is killed") {
  const TemporaryFolder folder;
  const std::string log = folder.with("log.csv", long_log());
  const std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  const std::string json = folder.file("result.json"), csv = folder.file("result.csv");
  const Words words{"check", log, "--procedure", procedure, "--json", json, "--csv", csv};
  const auto started = std::chrono::steady_clock::now();
  const int code = run_soakwright(words).exit_code;
  // As often before its end as after it, however slow this build or machine is.
  double longest = 2 * std::chrono::duration<double>(std::chrono::steady_clock::now() - started).count();
  const std::string new_json = text_of(json), new_csv = text_of(csv);
  REQUIRE(new_json.size() > 1000);
  REQUIRE(!new_csv.empty());
  std::mt19937 random(17);
  int killed = 0, whole = 0;
  for (int trial = 0; trial < kill_count(24); ++trial) {
    static_cast<void>(folder.with("result.json", "old"));
    static_cast<void>(folder.with("result.csv", "old"));
    const Ran ran = run_killed(std::uniform_real_distribution<>(0.002, longest)(random), words);
    (ran.exit_code == kKilled ? killed : whole) += 1;
    longest *= ran.exit_code == kKilled ? 1.1 : 0.8;
    INFO("trial " << trial << " ended with " << ran.exit_code);
    CHECK((ran.exit_code == kKilled || ran.exit_code == code));
    for (const auto& [file, text] : {std::pair{json, new_json}, std::pair{csv, new_csv}}) {
      const std::string now = text_of(file);
      CHECK((now == text || (ran.exit_code == kKilled && now == "old")));
    }
    for (const std::string& name : folder.names())
      CHECK((is_part_file(name) || name == "log.csv" || name == "p.toml" || name == "result.json" ||
             name == "result.csv"));
  }
  CHECK(killed > 0);
  CHECK(whole > 0);
}

TEST_CASE(
    "a journal cut or damaged anywhere is gone on with, and the results are those of an undisturbed batch") {
  const TemporaryFolder folder;
  const std::string logs = folder.file("logs"), json = folder.file("r.jsonl"), csv = folder.file("r.csv");
  fs::create_directory(logs);
  for (int i = 0; i < 8; ++i)
    static_cast<void>(
        folder.with("logs/" + std::to_string(i) + ".csv", i == 3 ? "broken" : log_of_hold(50 + 5 * i)));
  const Words words{"batch",   logs, "--procedure", folder.with("p.toml", procedure_of_an_hour()),
                    "--json",  json, "--csv",       csv,
                    "--resume"};
  const int code = run_soakwright(words).exit_code;
  const std::string whole = text_of(json) + text_of(csv);
  fs::remove(json);
  fs::remove(csv);
  // Results that cannot take their name at the end leave the whole journal.
  std::string journal;
  {
    constexpr std::size_t kBlock = 512;  // of the shell's `ulimit -f` (POSIX)
    const Ran limited = run_limited("-f " + std::to_string(whole.size() * 3 / 4 / kBlock), words);
    REQUIRE(limited.exit_code == 73);
    journal = text_of(json + ".journal");
    REQUIRE(journal.size() > whole.size() / 3);
  }
  std::mt19937 random(23);
  int from_journal = 0;
  for (int trial = 0; trial < kill_count(24); ++trial) {
    std::string damaged = journal;
    const std::size_t at = random() % journal.size();
    if (trial % 3 == 0)
      damaged.resize(at);  // the end is missing
    else if (trial % 3 == 1)
      damaged[at] = static_cast<char>(damaged[at] ^ (1 << random() % 7));
    else
      std::fill(damaged.begin() + static_cast<std::ptrdiff_t>(at), damaged.end(), '\0');  // a lost page
    static_cast<void>(folder.with("r.jsonl.journal", damaged));
    fs::remove(json);
    fs::remove(csv);
    const Ran ran = run_soakwright(words);
    INFO("trial " << trial << ", at " << at << " of " << journal.size() << "\n" << ran.err);
    CHECK(ran.exit_code == code);
    CHECK(text_of(json) + text_of(csv) == whole);
    from_journal += ran.err.find("from the journal") != std::string::npos ? 1 : 0;
    CHECK(folder.names() == Words{"logs", "p.toml", "r.csv", "r.jsonl"});
  }
  CHECK(from_journal > 0);
}
