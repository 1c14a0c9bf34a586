// SPDX-License-Identifier: GPL-3.0-or-later
// What README and manual show on a terminal is what the program prints.
//
// A block that begins with ```console holds commands after `$ ` and what they print, standard output before
// standard error. The blocks of a page run one after the other in a fresh copy of sample-logs. A line `…`
// leaves lines out, `…` within a line leaves a part of it out, and a run of spaces is as good as one.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kLeftOut = "…";

struct ShownCommand {
  std::size_t line = 0;
  std::string typed;
  std::vector<std::string> printed;
};

std::string with_single_spaces(const std::string& line) {
  std::string out;
  std::istringstream words(line);
  for (std::string word; words >> word;) out += (out.empty() ? "" : " ") + word;
  return out;
}

std::vector<ShownCommand> commands_in(const fs::path& page) {
  std::vector<ShownCommand> commands;
  std::istringstream in(text_of(page));
  bool inside = false;
  std::size_t number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (line == "```console") {
      inside = true;
    } else if (line == "```") {
      inside = false;
    } else if (inside && line.starts_with("$ ")) {
      commands.push_back({number, line.substr(2), {}});
    } else if (inside && !commands.empty() && !with_single_spaces(line).empty()) {
      commands.back().printed.push_back(with_single_spaces(line));
    }
  }
  return commands;
}

/// The parts of a shown line between `…` stand in `printed`, in order, the first and last at its ends.
bool is_line(const std::string& shown, const std::string& printed) {
  std::size_t at = 0;
  std::size_t begin = 0;
  while (true) {
    const std::size_t end = shown.find(kLeftOut, begin);
    const std::string part = shown.substr(begin, end == std::string::npos ? end : end - begin);
    if (end == std::string::npos)
      return printed.size() >= at + part.size() && printed.ends_with(part) && (begin != 0 || printed == part);
    const std::size_t found = printed.find(part, at);
    if (found == std::string::npos || (begin == 0 && found != 0)) return false;
    at = found + part.size();
    begin = end + kLeftOut.size();
  }
}

/// The first shown line that is not printed where it must be; empty where all are.
std::string missing_line(const std::vector<std::string>& shown, const std::vector<std::string>& printed) {
  std::size_t at = 0;
  bool may_skip = false;
  for (const std::string& line : shown) {
    if (line == kLeftOut) {
      may_skip = true;
      continue;
    }
    while (may_skip && at < printed.size() && !is_line(line, printed[at])) ++at;
    if (at == printed.size() || !is_line(line, printed[at])) return line;
    ++at;
    may_skip = false;
  }
  return may_skip || at == printed.size() ? std::string{} : "(no more lines than these)";
}

std::vector<std::string> printed_lines(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);)
    if (const std::string plain = with_single_spaces(line); !plain.empty()) lines.push_back(plain);
  return lines;
}

std::vector<fs::path> pages() {
  std::vector<fs::path> all{source_file("README.md")};
  for (const auto& entry : fs::directory_iterator(source_file("resources/manual")))
    if (entry.path().extension() == ".md") all.push_back(entry.path());
  return all;
}

/// Runs all commands of a page in one shell, so that `$?` is that of the command before; what each prints is
/// in a file of its own.
void run_page(const std::vector<ShownCommand>& commands, const fs::path& folder, const fs::path& outputs) {
  fs::copy(source_file("sample-logs"), folder, fs::copy_options::recursive);
  fs::create_directories(outputs);
  std::ofstream script(outputs / "script");
  script << "cd '" << folder.string() << "'\nPATH='" << fs::path(SOAKWRIGHT_PROGRAM).parent_path().string()
         << "':$PATH\nlast=0\n";
  for (std::size_t i = 0; i < commands.size(); ++i) {
    const std::string out = "'" + (outputs / std::to_string(i)).string();
    script << "(exit $last)\n{ " << commands[i].typed << "\n} >" << out << ".out' 2>" << out << ".err'\n"
           << "last=$?; echo $last >" << out << ".exit'\n";
  }
  script.close();
  run_words({"/bin/sh", (outputs / "script").string()});
}

/// The reports that a command writes or reads.
std::set<std::string> reports_named(const std::string& typed) {
  std::istringstream words(typed);
  std::set<std::string> all;
  for (std::string word; words >> word;)
    if (word.ends_with(".pdf")) all.insert(word);
  return all;
}

}  // namespace

TEST_CASE("a line that is left out in part is compared by the parts that are there") {
  CHECK(is_line("a …", "a b"));
  CHECK(is_line("a … c", "a b c"));
  CHECK(is_line("a b", "a b"));
  CHECK_FALSE(is_line("a b", "a b c"));
  CHECK_FALSE(is_line("a … d", "a b c"));
  CHECK_FALSE(is_line("b …", "a b"));
}

TEST_CASE("shown lines are printed in the same order, and no others where none are left out") {
  CHECK(missing_line({"a", "…", "c"}, {"a", "b", "c"}).empty());
  CHECK(missing_line({"…", "b", "…"}, {"a", "b", "c"}).empty());
  CHECK(missing_line({"c", "a"}, {"a", "c"}) == "c");
  CHECK_FALSE(missing_line({"a"}, {"a", "b"}).empty());
  CHECK(missing_line({"…", "d"}, {"a", "b"}) == "d");
}

TEST_CASE("what README and manual show of a command is what it prints") {
  // Exit code of a command that needs a part which this build was made without.
  constexpr const char* kNotInThisBuild = "69\n";
  std::size_t shown = 0;
  for (const fs::path& page : pages()) {
    const std::vector<ShownCommand> commands = commands_in(page);
    if (commands.empty()) continue;
    TemporaryFolder folder;
    const fs::path outputs = folder.file("outputs");
    run_page(commands, folder.file("logs"), outputs);
    bool later_needs_it = false;
    std::set<std::string> not_made;
    for (std::size_t i = 0; i < commands.size(); ++i) {
      const std::string number = std::to_string(i);
      const std::string exit_code = text_of(outputs / (number + ".exit"));
      const bool asks_for_it = commands[i].typed == "echo $?";
      const std::set<std::string> reports = reports_named(commands[i].typed);
      const bool needs_it = std::any_of(reports.begin(), reports.end(), [&](const std::string& report) {
        return not_made.count(report) > 0;
      });
      if (exit_code == kNotInThisBuild || needs_it || (later_needs_it && asks_for_it)) {
        later_needs_it = true;
        not_made.insert(reports.begin(), reports.end());
        continue;
      }
      later_needs_it = false;
      const std::string out = text_of(outputs / (number + ".out")) + text_of(outputs / (number + ".err"));
      INFO(page.filename().string() << ":" << commands[i].line << ": $ " << commands[i].typed << "\n" << out);
      CHECK(missing_line(commands[i].printed, printed_lines(out)) == "");
      ++shown;
    }
  }
  CHECK(shown > 15);
}
