// SPDX-License-Identifier: GPL-3.0-or-later
// Wrong usage is 64, what this build lacks is 69; both say what would help. Help and version are everywhere.
#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Catch::Matchers::EndsWith;
using Catch::Matchers::StartsWith;
using Words = std::vector<std::string>;

namespace {

const std::string sample = source_file("sample-logs/w-117-stress-relief/");

}  // namespace

TEST_CASE("wrong usage answers 64 and says what would help") {
  struct Row {
    Words arguments;
    const char* says;
  };
  const std::vector<Row> rows = {
      {{}, "no command is given; see `soakwright --help`"},
      {{"frob"}, "there is no command 'frob'; see `soakwright --help`"},
      {{"--frob"}, "; see `soakwright --help`"},
      {{"check"}, "no log is named; "},
      {{"check"}, "no procedure is named; give one with --procedure"},
      {{"check", sample + "d3-n2.csv"}, "no procedure is named; "},
      {{"inspect"}, "no log is named; "},
      {{"inspect", "a", "b"}, "; see `soakwright inspect --help`"},
      {{"inspect", "a", "--procedure", "p"}, "; see `soakwright inspect --help`"},
      {{"check", "a", "--json"}, "--json"},
      {{"check", "a", "--json", ""}, "--json has an empty value"},
      {{"check", "", "--procedure", "p"}, "LOG has an empty value"},
      {{"check", "a", "--dates", "dym"}, "--dates is dmy, mdy or ymd, not 'dym'"},
      {{"check", "a", "--unit", "K"}, "--unit is C or F, not 'K'"},
      {{"check", "a", "--report", "-"}, "--report names a file that ends in .pdf, not '-'"},
      {{"check", "a", "--report", "a.docx"}, "--report names a file that ends in .pdf, not 'a.docx'"},
      {{"check", "a", "--report", ".pdf"}, "--report names a file that ends in .pdf, not '.pdf'"},
      {{"check", "a", "--report", "a.pdf", "--paper", "a3"}, "--paper is a4 or letter, not 'a3'"},
      {{"check", "a", "--paper", "letter"}, "--paper is of the report, and no --report is named"},
      {{"check", "a", "--both-units"}, "--both-units is of the report, and no --report is named"},
      {{"inspect", "a", "--chart", "-"}, "--chart names a file that ends in .png or .svg, not '-'"},
      {{"inspect", "a", "--chart", "a.pdf"}, "--chart names a file that ends in .png or .svg, not 'a.pdf'"},
      {{"check", "no-log", "--json", "a.svg", "--chart", "./a.svg"}, "named for both --json and --chart"},
      {{"check", "no-log", "--json", "a.pdf", "--report", "a.pdf"}, "named for both --json and --report"},
      {{"check", "a", "--json", "x", "--json", "y"}, "--json"},
      {{"check", "--job", sample + "job.toml", "--json", sample + "job.toml"}, "would be written over"},
      {{"check", "--job", sample + "job.toml", "--json", sample + "d3-n2.csv"}, "would be written over"},
      {{"inspect", "--job", sample + "no-job.toml", "--json", sample + "no-job.toml"},
       "would be written over"},
      {{"inspect", "--job", sample + "job.toml", "--json", sample + "../w-117-stress-relief/htp-021.toml"},
       "would be written over"},
  };
  for (const Row& row : rows) {
    const Ran ran = run_soakwright(row.arguments);
    INFO(Catch::rangeToString(row.arguments) << "\n" << ran.err);
    CHECK(ran.exit_code == 64);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, StartsWith("soakwright: ") && Contains(row.says));
  }
}

TEST_CASE("help and version are everywhere") {
  for (const char* command : {"", "inspect", "check", "batch", "draft", "sign", "verify"}) {
    const auto with = [&](const char* option) {
      return run_soakwright(*command == '\0' ? Words{option} : Words{command, option});
    };
    INFO(command);
    const Ran help = with("--help");
    CHECK(help.exit_code == 0);
    CHECK(help.err.empty());
    CHECK_THAT(help.out, Contains("Usage: soakwright") && Contains("Exit codes: "));
    const Ran version = with("--version");
    CHECK(version.exit_code == 0);
    CHECK(version.err.empty());
    CHECK(version.out == "soakwright " SOAKWRIGHT_VERSION "\n");
  }
}

TEST_CASE("outputs that meet in one file through links are refused before any work") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder.file("far"));
  std::filesystem::create_symlink("far", folder.file("near"));
  std::filesystem::create_symlink("far/a.svg", folder.file("a.svg"));
  for (const std::string& other : {folder.file("near/a.svg"), folder.file("far/a.svg")}) {
    const Ran ran = run_soakwright(
        {"inspect", folder.file("no-log.csv"), "--json", folder.file("a.svg"), "--chart", other});
    INFO(ran.err);
    CHECK(ran.exit_code == 64);
    CHECK_THAT(ran.err, Contains("named for both --json and --chart"));
  }
}

TEST_CASE("a file that the job names and that is not there is reported with the job's line") {
  const TemporaryFolder folder;
  const std::string job =
      folder.with("job.toml", "soakwright = \"job 1\"\nlog = \"no.csv\"\nprocedure = \"no.toml\"\n");
  const Ran check = run_soakwright({"check", "--job", job});
  CHECK(check.exit_code == 66);
  CHECK_THAT(check.err, Contains(folder.file("no.toml") + ": there is no such file; ") &&
                            Contains("`procedure` in " + job + ", line 3, names this file"));
  const Ran inspect = run_soakwright({"inspect", "--job", job});
  CHECK(inspect.exit_code == 66);
  CHECK_THAT(inspect.err, Contains(folder.file("no.csv") + ": cannot be opened: ") &&
                              Contains("`log` in " + job + ", line 2, names this file"));
  const Ran option = run_soakwright({"inspect", folder.file("no.csv"), "--job", job});
  CHECK_THAT(option.err, !Contains("names this file"));
}

TEST_CASE("an option wins over what the job names") {
  const TemporaryFolder folder;
  const std::string other = folder.with("other.toml",
                                        "soakwright = \"procedure 1\"\nnumber = \"OTHER\"\nunit = \"C\"\n"
                                        "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"1 min\"\n");
  const Ran ran =
      run_soakwright({"check", "--job", sample + "job.toml", "--procedure", other, "--json", "-"});
  CHECK(ran.exit_code == 0);
  CHECK_THAT(ran.out, Contains("\"number\": \"OTHER\""));
}
