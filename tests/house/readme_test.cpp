// SPDX-License-Identifier: GPL-3.0-or-later
// The README is kept true: its command line is the program's, its exit codes and its samples are there.
#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;

namespace {

const std::string& readme() {
  static const std::string text = text_of(source_file("README.md"));
  return text;
}

std::set<std::string> matches(const std::string& text, const char* pattern) {
  const std::regex expression(pattern);
  std::set<std::string> found;
  for (std::sregex_iterator match(text.begin(), text.end(), expression), end; match != end; ++match)
    found.insert((*match)[match->size() > 1 ? 1 : 0]);
  return found;
}

/// From `soakwright COMMAND` to the next line that begins with `soakwright`, in the README's list of
/// commands.
std::string usage_in_readme(const std::string& command) {
  const std::size_t list = readme().find("## Command line");
  const std::size_t begin = readme().find("\nsoakwright " + command, list);
  if (list == std::string::npos || begin == std::string::npos) return "";
  std::string usage = readme().substr(begin, readme().find("\nsoakwright", begin + 1) - begin);
  if (usage.find("[IMPORT SETTINGS]") != std::string::npos) {
    const std::size_t settings = readme().find("\nIMPORT SETTINGS:", list);
    usage += readme().substr(settings, readme().find("```", settings) - settings);
  }
  return usage;
}

}  // namespace

TEST_CASE("the README and --help name the same options") {
  for (const char* command : {"inspect", "check", "batch", "draft", "sign", "verify"}) {
    INFO(command);
    // Options that begin a line; others are only spoken of.
    auto in_help = matches(run_soakwright({command, "--help"}).out, "\n  (?:-[a-z],)?(--[a-z-]+)");
    in_help.erase("--help");
    in_help.erase("--version");
    CHECK_FALSE(in_help.empty());
    CHECK(matches(usage_in_readme(command), "(--[a-z-]+)") == in_help);
  }
}

TEST_CASE("the README and --help name the same exit codes") {
  const std::string help = run_soakwright({"--help"}).out;
  const std::size_t begin = readme().find("\nExit codes: ");
  REQUIRE(begin != std::string::npos);
  const std::string paragraph = readme().substr(begin, readme().find("Messages go", begin) - begin);
  const char* number = "\\b([0-9]+) ";
  CHECK(matches(help.substr(help.find("Exit codes: ")), number) == matches(paragraph, number));
}

TEST_CASE("files and folders that the README names are there") {
  const auto named = matches(readme(), "(?:sample-logs|app|tests)/[A-Za-z0-9/_.-]*[A-Za-z0-9]");
  CHECK(named.size() > 4);
  for (const std::string& path : named) {
    INFO(path);
    CHECK(fs::exists(source_file(path)));
  }
}

TEST_CASE("every sample folder stands in the README") {
  for (const auto& entry : fs::directory_iterator(source_file("sample-logs"))) {
    if (!entry.is_directory()) continue;
    INFO(entry.path().filename().string());
    CHECK(readme().find(entry.path().filename().string()) != std::string::npos);
  }
}

TEST_CASE("the figures that the README gives of the samples are the program's") {
  struct Sample {
    const char* job;
    int exit_code;
    std::vector<std::string> said;  ///< in the README and by the program
  };
  const std::vector<Sample> samples = {
      {"w-117-stress-relief/job.toml",
       0,
       {"144.7", "106.4 °C/h", "38.3 °C/h", "11:29:45", "2 h 16 min 47 s"}},
      {"w-118-late-and-dipping/job.toml", 1, {"210", "144.7", "1 h 18 min 41 s"}},
      {"w-121-bake-out/job.toml", 2, {}},
  };
  for (const Sample& sample : samples) {
    INFO(sample.job);
    const Ran ran = run_soakwright({"check", "--job", source_file(std::string("sample-logs/") + sample.job)});
    CHECK(ran.exit_code == sample.exit_code);
    for (const std::string& said : sample.said) {
      INFO(said);
      CHECK(readme().find(said) != std::string::npos);
      CHECK(ran.out.find(said) != std::string::npos);
    }
  }
}
