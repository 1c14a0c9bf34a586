// SPDX-License-Identifier: GPL-3.0-or-later
// The manual page and the completion of shells are made from the table of options: they name what --help
// names, and the shells that are here read them without complaint.
#include <filesystem>
#include <regex>
#include <set>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Words = std::vector<std::string>;

namespace {

std::string made(const char* name) { return text_of(fs::path(SOAKWRIGHT_MADE_TEXTS) / name); }

std::set<std::string> found_in(const std::string& text, const char* pattern) {
  const std::regex expression(pattern);
  std::set<std::string> found;
  for (std::sregex_iterator match(text.begin(), text.end(), expression), end; match != end; ++match)
    found.insert((*match)[match->size() > 1 ? 1 : 0]);
  return found;
}

std::set<std::string> commands_in_help() { return found_in(run_soakwright({"--help"}).out, "\n  ([a-z]+) "); }

/// Options that begin a line; others are only spoken of.
std::set<std::string> options_in_help(const std::string& command) {
  return found_in(run_soakwright({command, "--help"}).out, "\n  (?:-[a-z],)?(--[a-z-]+)");
}

/// The section of the manual page on a command.
std::string manual_section(const std::string& command) {
  const std::string page = made("soakwright.1");
  const std::size_t begin = page.find(".SH \"soakwright " + command + "\"");
  if (begin == std::string::npos) return {};
  return std::regex_replace(page.substr(begin, page.find("\n.SH", begin + 1) - begin), std::regex("\\\\-"),
                            "-");
}

bool is_here(const std::string& program) {
  return fs::exists("/usr/bin/" + program) || fs::exists("/bin/" + program);
}

/// What bash completes after these words, the last of which is being typed.
std::set<std::string> completed(const std::string& words) {
  const std::string script =
      ". '" SOAKWRIGHT_MADE_TEXTS "/soakwright.bash'; COMP_WORDS=(" + words +
      "); COMP_CWORD=$((${#COMP_WORDS[@]}-1)); _soakwright; printf '%s\\n' \"${COMPREPLY[@]}\"";
  return found_in(run_words({"/bin/bash", "-c", script}).out, "([^\n]+)");
}

}  // namespace

TEST_CASE("the manual page names every command and option of --help, and no other") {
  const auto commands = commands_in_help();
  CHECK(commands.contains("batch"));
  for (const std::string& command : commands) {
    INFO(command);
    const std::string section = manual_section(command);
    CHECK(found_in(section, "\\\\fB(--[a-z-]+)") == options_in_help(command));
  }
  CHECK_THAT(made("soakwright.1"), Contains(".SH \"EXIT STATUS\"") && Contains("66 cannot be opened"));
}

TEST_CASE("the manual page is read without complaint, where there is a reader") {
  if (!is_here("groff")) {
    WARN("groff is not here");
    return;
  }
  const Ran ran =
      run_words({"/usr/bin/groff", "-man", "-Tutf8", "-ww", "-z", (SOAKWRIGHT_MADE_TEXTS "/soakwright.1")});
  CHECK(ran.exit_code == 0);
  CHECK(ran.err.empty());
}

TEST_CASE("bash completes commands, options and the words of a choice") {
  CHECK(completed("soakwright ba") == std::set<std::string>{"batch"});
  CHECK(completed("soakwright check --dat").contains("--dates"));
  CHECK(completed("soakwright check --dates ''") == std::set<std::string>{"dmy", "mdy", "ymd"});
  CHECK(completed("soakwright check --unit ''") == std::set<std::string>{"C", "F"});
  CHECK(completed("soakwright inspect --proc").empty());
  for (const std::string& command : commands_in_help()) {
    INFO(command);
    const auto found = completed("soakwright " + command + " --");
    const auto expected = options_in_help(command);
    CHECK(std::includes(found.begin(), found.end(), expected.begin(), expected.end()));
  }
}

TEST_CASE("zsh and fish have every option of every command, and read theirs where they are here") {
  const std::string zsh = made("_soakwright"), fish = made("soakwright.fish");
  CHECK(zsh.starts_with("#compdef soakwright\n"));
  for (const std::string& command : commands_in_help()) {
    for (const std::string& option : options_in_help(command)) {
      INFO(command << ' ' << option);
      CHECK_THAT(zsh, Contains("'" + option + "["));
      CHECK_THAT(fish, Catch::Matchers::Matches("[\\s\\S]*__fish_seen_subcommand_from " + command +
                                                "'[^\\n]* -l " + option.substr(2) + " [\\s\\S]*"));
    }
  }
  if (is_here("zsh"))
    CHECK(run_words({"/usr/bin/zsh", "-n", SOAKWRIGHT_MADE_TEXTS "/_soakwright"}).err.empty());
  if (is_here("fish"))
    CHECK(run_words({"/usr/bin/fish", "-n", SOAKWRIGHT_MADE_TEXTS "/soakwright.fish"}).err.empty());
}
