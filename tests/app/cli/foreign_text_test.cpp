// SPDX-License-Identifier: GPL-3.0-or-later
// What a log, a job or a path brings along reaches the terminal as text and never as a command to it.
#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/units/printable_text.h"
#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;

namespace {

/// Lines of `text`, each of which must be as printable() leaves it.
std::size_t lines_of_safe_text(const std::string& text) {
  std::size_t lines = 0;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string line = text.substr(begin, end - begin);
    CHECK(soakwright::printable(line) == line);
    begin = end + 1;
    ++lines;
  }
  return lines;
}

/// Names that try to steer a terminal: ECMA-48 sequences in both forms, an operating system command, a bell,
/// a new line that forges a message, overrides of the direction, bytes that are no UTF-8.
const std::vector<std::string> kAttacks = {
    "TC1\x1b[31m",
    "TC2\x1b]0;x\x07",
    ("\xC2\x9B"
     "2JTC3"),
    ("\xE2\x80\xAE"
     "EVIL"),
    "\xE2\x81\xA6TC5",
    "TC6\xFF\xFE",
    "TC7\x7F\x08",
    "TC8\xE2\x80\x8F",
};

std::string log_with(const std::string& name) {
  std::string text = "Time," + name + " (C),TC9 (C)\n";
  for (int minute = 0; minute < 30; ++minute)
    text += "2031-04-02 06:" + std::string(minute < 10 ? "0" : "") + std::to_string(minute) + ":00," +
            std::to_string(20 + minute) + ".0," + std::to_string(20 + minute) + ".5\n";
  return text;
}

}  // namespace

TEST_CASE("names from a log are printed as text") {
  for (const std::string& attack : kAttacks) {
    const TemporaryFolder folder;
    const Ran ran = run_soakwright({"inspect", folder.with("log.csv", log_with(attack))});
    INFO(soakwright::printable(attack) << "\n" << ran.err);
    CHECK(ran.exit_code == 0);
    CHECK(lines_of_safe_text(ran.out) > 10);
    CHECK(lines_of_safe_text(run_soakwright({"inspect", folder.file("log.csv"), "--json", "-"}).out) > 10);
  }
}

TEST_CASE("a message about a log, a job or a path is one line of text") {
  const TemporaryFolder folder;
  const std::string unreadable = "Time,TC1\x1b[31m,TC2\x1b]0;x\x07\nfoo\x1b[2J,1,2\nbar,2,3\nbaz,3,4\n";
  for (const Ran& ran :
       {run_soakwright({"inspect", folder.with("e.csv", unreadable)}),
        run_soakwright({"check", "--job",
                        folder.with("job.toml",
                                    "soakwright = \"job 1\"\nlog = \"a\\u001b[2J\\nsoakwright: ok\"\n"
                                    "procedure = \"p.toml\"\n")}),
        run_soakwright({"inspect", folder.file("caf\xE9\x1b[2J\nsoakwright: ok.csv")}),
        run_soakwright({"inspect", "--dates", "x\x1b[2J\ny", folder.file("e.csv")}),
        run_soakwright({"fr\x1b[2Job"})}) {
    INFO(ran.err);
    CHECK(ran.exit_code >= 64);
    CHECK(ran.out.empty());
    CHECK(lines_of_safe_text(ran.err) ==
          static_cast<std::size_t>(std::count(ran.err.begin(), ran.err.end(), '\n')));
    for (std::size_t at = 0; at < ran.err.size(); at = ran.err.find('\n', at) + 1)
      CHECK(ran.err.compare(at, 12, "soakwright: ") == 0);
    CHECK_THAT(ran.err, !Contains("\nsoakwright: ok"));
  }
}
