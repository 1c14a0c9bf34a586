// SPDX-License-Identifier: GPL-3.0-or-later
// On a terminal tables fit its width; elsewhere each row stays on one line. Widths are those of an 80-column
// terminal (common practice, no source) and of a narrower and a wider one.
#include <algorithm>
#include <array>
#include <sstream>
#include <stdexcept>

#include <catch2/catch.hpp>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Words = std::vector<std::string>;

namespace {

/// What the program writes to a terminal of so many columns, both outputs, without colours.
std::string on_terminal(Words words, unsigned short columns) {
  words.insert(words.begin(), SOAKWRIGHT_PROGRAM);
  std::vector<char*> pointers;
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  winsize size{};
  size.ws_row = 24;
  size.ws_col = columns;
  int terminal = -1;
  const pid_t child = forkpty(&terminal, nullptr, nullptr, &size);
  if (child < 0) throw std::runtime_error("there is no terminal to be had");
  if (child == 0) {
    setenv("TERM", "xterm", 1);
    setenv("NO_COLOR", "1", 1);
    execv(pointers[0], pointers.data());
    _exit(127);
  }
  std::string text;
  std::array<char, 4096> piece{};
  for (ssize_t got = 0; (got = read(terminal, piece.data(), piece.size())) > 0;)
    text.append(piece.data(), static_cast<std::size_t>(got));
  int status = 0;
  waitpid(child, &status, 0);
  close(terminal);
  text.erase(std::remove(text.begin(), text.end(), '\r'), text.end());
  return text;
}

std::size_t widest_line(const std::string& text) {
  std::size_t widest = 0;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    const auto places = std::count_if(
        line.begin(), line.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
    widest = std::max(widest, static_cast<std::size_t>(places));
  }
  return widest;
}

const std::string late_job = source_file("sample-logs/w-118-late-and-dipping/job.toml");

}  // namespace

TEST_CASE("pages fit a terminal of 80 columns and one of 120, and use the room of the wider one") {
  for (const Words& words : {Words{"check", "--job", late_job}, Words{"inspect", "--job", late_job}}) {
    INFO(words.front());
    const std::string narrow = on_terminal(words, 80), wide = on_terminal(words, 120);
    INFO(narrow);
    CHECK(widest_line(narrow) <= 80);
    CHECK(widest_line(narrow) > 60);
    CHECK(widest_line(wide) <= 120);
    CHECK(widest_line(wide) > 80);
  }
}

TEST_CASE("no figure is lost where a table is fitted") {
  const std::string narrow = on_terminal({"check", "--job", late_job}, 80);
  for (const char* figure : {"210.2", "144.7", "1 h 18 min", "not met"}) CHECK_THAT(narrow, Contains(figure));
}

TEST_CASE("elsewhere than on a terminal each row of a table is one line") {
  const std::string piped = run_soakwright({"check", "--job", late_job}, {{"COLUMNS", "40"}}).out;
  CHECK_THAT(piped,
             Catch::Matchers::Matches(R"([\s\S]*Heating rate[^\n]*144\.7[^\n]*210\.2[^\n]*Not met[\s\S]*)"));
}

TEST_CASE("a batch shows its progress on a terminal in one line that is written over") {
  const TemporaryFolder folder;
  for (int i = 0; i < 60; ++i) static_cast<void>(folder.with(std::to_string(i) + ".csv", log_of_hold(600)));
  const Words words{"batch", folder.file(""), "--procedure", folder.with("p.toml", procedure_of_an_hour())};
  const std::string text = on_terminal(words, 80);
  CHECK_THAT(text, Contains("60 of 60 logs, ") && Contains(" logs/s"));
  CHECK(widest_line(text.substr(text.find("Summary"))) <= 80);
  const Ran piped = run_soakwright(words);
  CHECK_THAT(piped.err, Contains("soakwright: 60 of 60 logs, ") && !Contains("\x1b["));
}
