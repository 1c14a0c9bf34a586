// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot be read or makes no sense: the right exit code, a message that names the place and helps, no
// output.
#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <sys/stat.h>
#include <unistd.h>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

const std::string good_log = source_file("sample-logs/w-117-stress-relief/d3-n2.csv");
const std::string good_procedure = source_file("sample-logs/w-117-stress-relief/htp-021.toml");

/// `check` with a result asked for: refused with `exit_code`, in words that name `named`, and nothing
/// written.
void refused(const std::string& log, const std::string& procedure, int exit_code, const std::string& named,
             const std::string& says = "; ") {
  const TemporaryFolder folder;
  const Ran ran =
      run_soakwright({"check", log, "--procedure", procedure, "--json", folder.file("result.json")});
  INFO(ran.err);
  CHECK(ran.exit_code == exit_code);
  CHECK(ran.out.empty());
  CHECK(folder.names().empty());
  CHECK_THAT(ran.err, StartsWith("soakwright: " + named) && Contains("; ") && Contains(says));
}

std::string hold(const std::string& lines) {
  return "soakwright = \"procedure 1\"\nnumber = \"P\"\nunit = \"C\"\n[[stage]]\nkind = \"hold\"\n" + lines;
}

}  // namespace

TEST_CASE("a log that is no log answers 65 and writes nothing") {
  const TemporaryFolder folder;
  std::string binary =
      "\x7F"
      "ELF\x02\x01\x01";
  for (int i = 0; i < 4096; ++i) binary += static_cast<char>(i * 37 % 256);
  const std::pair<const char*, std::string> logs[] = {
      {"empty.csv", ""},
      {"binary.csv", binary},
      {"words.csv", "The quick brown fox\njumps over the lazy dog\n"},
      {"one-row.csv", "Time,TC1\n2031-04-02 06:00:00,20.1\n"},
      {"no-time.csv", "TC1,TC2\n20.1,19.8\n20.0,19.9\n19.9,20.1\n"},
      {"two-orders.csv",
       "Time,TC1 (C)\n03/04/2031 06:00,20.1\n03/04/2031 06:01,20.2\n03/04/2031 06:02,20.3\n"},
  };
  for (const auto& [name, text] : logs) {
    INFO(name);
    const std::string log = folder.with(name, text);
    refused(log, good_procedure, 65, log + ":");
  }
}

TEST_CASE("a date order that cannot be settled names the option that settles it") {
  const TemporaryFolder folder;
  const std::string log = folder.with(
      "log.csv", "Time,TC1 (C)\n03/04/2031 06:00,20.1\n03/04/2031 06:01,20.2\n03/04/2031 06:02,20.3\n");
  CHECK_THAT(run_soakwright({"inspect", log}).err, Contains("--dates dmy|mdy|ymd"));
  const Ran settled = run_soakwright({"inspect", log, "--dates", "dmy", "--json", "-"});
  CHECK(settled.exit_code == 0);
  CHECK_THAT(settled.out, Contains("\"start\": \"2031-04-03T06:00:00\""));
}

TEST_CASE("a million empty lines are no log") {
  const TemporaryFolder folder;
  const std::string log = folder.with("empty-lines.csv", std::string(1'000'000, '\n'));
  refused(log, good_procedure, 65, log + ":");
}

TEST_CASE("what cannot be opened answers 66") {
  const TemporaryFolder folder;
  const std::string nothing = folder.file("nothing.csv");
  refused(nothing, good_procedure, 66, nothing + ":");
  refused(good_log, folder.file("nothing.toml"), 66, folder.file("nothing.toml") + ":");
  // A folder for a file.
  refused(folder.file(""), good_procedure, 66, folder.file("") + ":", "folder");
  refused(good_log, folder.file(""), 66, folder.file("") + ":", "folder");

  const Ran ran = run_soakwright({"check", "--job", folder.file("no-job.toml")});
  CHECK(ran.exit_code == 66);
  CHECK_THAT(ran.err, StartsWith("soakwright: " + folder.file("no-job.toml") + ":"));
}

TEST_CASE("a file without the right to read it answers 66") {
  if (geteuid() == 0) {
    WARN("root may read everything: run the tests as a user for this one");
    return;
  }
  const TemporaryFolder folder;
  const std::string log = folder.with("closed.csv", text_of(good_log));
  REQUIRE(chmod(log.c_str(), 0) == 0);
  refused(log, good_procedure, 66, log + ":");
}

TEST_CASE("a procedure that makes no sense answers 65 with file and line") {
  struct Row {
    const char* what;
    std::string text;
    const char* line;
    const char* says;
  };
  const std::vector<Row> rows = {
      {"unknown key", hold("low = 590\ntime_mim = \"95 min\"\ntime_min = \"95 min\"\n"), ":7: ", "time_mim"},
      {"range upside down", hold("low = 620\nhigh = 590\ntime_min = \"95 min\"\n"), ":", "high"},
      {"not a number", hold("low = nan\ntime_min = \"95 min\"\n"), ":6: ", "low"},
      {"infinite", hold("low = 590\nhigh = inf\ntime_min = \"95 min\"\n"), ":7: ", "high"},
      {"text for a number", hold("low = \"590\"\ntime_min = \"95 min\"\n"), ":6: ", "low"},
      {"missing key", hold("time_min = \"95 min\"\n"), ":", "low"},
      {"no stage", "soakwright = \"procedure 1\"\nnumber = \"P\"\nunit = \"C\"\n", ":", "stage"},
      {"rule without a thickness",
       "soakwright = \"procedure 1\"\nnumber = \"P\"\nunit = \"C\"\n[[stage]]\nkind = \"heat\"\n"
       "rate_max = { over = 5500, per = \"mm\" }\n",
       ":", "thickness"},
      {"no TOML", "soakwright = \n", ":1: ", ""},
      {"a log", "Time,TC1\n2031-04-02 06:00:00,20.1\n", ":1: ", ""},
      {"empty", "", ":", "soakwright"},
      {"guarded, and no job with tolerances",
       "soakwright = \"procedure 1\"\nnumber = \"P\"\nunit = \"C\"\n[evaluation]\ndecision_rule = "
       "\"guarded\"\n"
       "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"95 min\"\n",
       ":", "guarded"},
  };
  const TemporaryFolder folder;
  for (const Row& row : rows) {
    INFO(row.what);
    const std::string procedure = folder.with("procedure.toml", row.text);
    refused(good_log, procedure, 65, procedure + row.line, row.says);
  }
}

TEST_CASE("all that is wrong with job and procedure is said in one run") {
  const TemporaryFolder folder;
  const std::string job = folder.with("job.toml", "soakwright = \"job 1\"\nwerk = \"D-3\"\n");
  const std::string procedure = folder.with("procedure.toml", hold("low = 590\nhigh = inf\n"));
  const Ran ran = run_soakwright({"check", good_log, "--job", job, "--procedure", procedure});
  CHECK(ran.exit_code == 65);
  CHECK_THAT(ran.err, Contains(job + ":2: ") && Contains("werk") && Contains(procedure + ":7: "));
}
