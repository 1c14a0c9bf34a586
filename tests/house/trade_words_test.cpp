// SPDX-License-Identifier: GPL-3.0-or-later
// What a user reads has the trade's words: README, manual, samples, rules, and every text in the program. The
// words below were the project's own once, and have one of the trade's.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/house/source_tree.h"

namespace fs = std::filesystem;

namespace {

const fs::path top = SOAKWRIGHT_SOURCE_DIR;

struct PrivateWord {
  const char* pattern;  ///< without regard to capitals
  const char* say;
};

constexpr PrivateWord kPrivateWords[] = {
    {"asked|asks", "specified, required"},
    {"judge[ds]?|judging", "evaluate"},
    {"undecided", "inconclusive"},
    {"departures?", "excursion"},
    {"grace", "excursion allowed"},
    {"bridged?|holes? joined", "interpolate"},
    {"ceiling", "maximum temperature"},
    {"put aside|set aside", "exclude"},
    {"duty|duties", "role"},
    {"reading sheet", "import settings"},
    {"opened lately", "recent files"},
    {"put away", "dismiss"},
    {"earlier records?", "previous record"},
    {"blanks", "spaces"},
    {"off-work", "detached"},
    {"first drift", "first deviation"},
    {"bound to be missed", "could no longer be met after"},
    {"would have had to", "short, too long"},
    {"worth the same", "equivalent time at temperature"},
    {"nothing where", "none if"},
};

std::regex whole_word(const std::string& pattern) {
  return std::regex("\\b(?:" + pattern + ")\\b", std::regex::icase | std::regex::optimize);
}

/// The first private word in `line`, with what to say; empty if there is none.
std::string private_word_in(const std::string& line) {
  static const std::regex any = [] {
    std::string all;
    for (const PrivateWord& word : kPrivateWords) all += (all.empty() ? "" : "|") + std::string(word.pattern);
    return whole_word(all);
  }();
  std::smatch found;
  if (!std::regex_search(line, found, any)) return {};
  for (const PrivateWord& word : kPrivateWords)
    if (const std::string text = found.str(); std::regex_match(text, whole_word(word.pattern)))
      return "'" + text + "': say " + word.say;
  return "'" + found.str() + "'";
}

/// The string literals of a line of C++, one behind the other.
std::string literals_of(const std::string& line) {
  static const std::regex literal(R"re("((?:[^"\\]|\\.)*)")re");
  std::string all;
  const std::string code = line.find("//") < line.find('"') ? std::string{} : line;
  for (std::sregex_iterator match(code.begin(), code.end(), literal), end; match != end; ++match)
    all += (*match)[1].str() + " ";
  return all;
}

std::vector<fs::path> pages() {
  std::vector<fs::path> all{top / "README.md", top / "DEVELOPERS.md"};
  for (const char* folder : {"resources", "sample-logs", ".github"})
    for (const auto& entry : fs::recursive_directory_iterator(top / folder))
      if (const auto ending = entry.path().extension(); ending == ".md" || ending == ".toml")
        all.push_back(entry.path());
  return all;
}

}  // namespace

TEST_CASE("a private word is found whole, in a text and not in a comment") {
  CHECK(private_word_in("The limit that was Asked for") == "'Asked': say specified, required");
  CHECK(private_word_in("a masked value").empty());
  CHECK(literals_of(R"(say("two", "words");)") == "two words ");
  CHECK(literals_of(R"(say(x);  // "asked")").empty());
}

TEST_CASE("README, manual, samples and rules have the trade's words") {
  for (const fs::path& page : pages()) {
    std::size_t number = 0;
    for (const std::string& line : lines_of(page)) {
      ++number;
      if (const std::string word = private_word_in(line); !word.empty())
        FAIL_CHECK(page.lexically_relative(top).string() << ":" << number << ": " << word);
    }
  }
}

TEST_CASE("the program's own texts have the trade's words") {
  std::size_t texts = 0;
  for (const std::string& file : cpp_files(top)) {
    if (file.starts_with("tests/")) continue;
    std::size_t number = 0;
    for (const std::string& line : lines_of(top / file)) {
      ++number;
      const std::string literals = literals_of(line);
      texts += literals.empty() ? 0 : 1;
      if (const std::string word = private_word_in(literals); !word.empty())
        FAIL_CHECK(file << ":" << number << ": " << word);
    }
  }
  CHECK(texts > 1000);
}
