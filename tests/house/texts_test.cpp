// SPDX-License-Identifier: GPL-3.0-or-later
// Words for people are made in core/wording; elsewhere the core hands on facts.
//
// Problems are worded in the files *_problems.cpp of their modules. In the modules that read job, procedure,
// review and log, a value that the manual's page of keys lists is no text: it is written the same in every
// language.
#include <regex>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/house/source_tree.h"

namespace {

const std::filesystem::path top = SOAKWRIGHT_SOURCE_DIR;

/// The string literals of a line, without those in a comment behind it.
std::vector<std::string> literals_in(const std::string& line) {
  std::vector<std::string> literals;
  for (std::size_t at = 0; at < line.size(); ++at) {
    if (line.compare(at, 2, "//") == 0) break;
    if (line.compare(at, 3, "'\"'") == 0) at += 2;
    if (line[at] != '"') continue;
    std::string literal;
    for (++at; at < line.size() && line[at] != '"'; ++at) {
      if (line[at] == '\\') literal += line[at++];
      literal += line[at];
    }
    literals.push_back(literal);
  }
  return literals;
}

bool has_two_words(const std::string& literal) {
  static const std::regex two_words("[A-Za-z]{2,}[,;:.]? [A-Za-z]{2,}");
  return std::regex_search(literal, two_words);
}

/// Job, procedure, review and import settings are read here.
bool reads_keys(const std::string& file) {
  return file.starts_with("core/procedure/") || file.starts_with("core/read/");
}

/// The values of keys that the manual lists: `"set point"`.
std::set<std::string> values_of_keys() {
  static const std::regex value("`\"([^\"`]+)\"`");
  std::set<std::string> values;
  for (const std::string& line : lines_of(top / "resources/manual/keys.md"))
    for (std::sregex_iterator match(line.begin(), line.end(), value), end; match != end; ++match)
      values.insert((*match)[1]);
  return values;
}

std::size_t texts_in(const std::vector<std::string>& lines, const std::set<std::string>& values = {}) {
  std::size_t count = 0;
  for (const std::string& line : lines) {
    if (line.find_first_not_of(' ') != std::string::npos && line[line.find_first_not_of(' ')] == '#')
      continue;
    if (line.find("static_assert") != std::string::npos) continue;
    for (const std::string& literal : literals_in(line))
      count += has_two_words(literal) && !values.contains(literal) ? 1 : 0;
  }
  return count;
}

bool may_word(const std::string& file) {
  return file.starts_with("core/wording/") || file.ends_with("_problems.cpp");
}

}  // namespace

TEST_CASE("a literal of two words or more is found, one of a comment is not") {
  CHECK(texts_in({R"(say("two words");)"}) == 1);
  CHECK(texts_in({R"(say("one", "{} and {}"), "a,b");)"}) == 0);
  CHECK(texts_in({R"(say("the limit", '"', "the value");)"}) == 2);
  CHECK(texts_in({R"(say(x);  // "two words")"}) == 0);
  CHECK(texts_in({R"(#include "two words")", R"(say("a \" two words");)"}) == 1);
  CHECK(texts_in({R"(word("set point", "the set point");)"}, {"set point"}) == 1);
}

TEST_CASE("the words that are written in our files are known from the manual") {
  const std::set<std::string> values = values_of_keys();
  CHECK(values.contains("set point"));
  CHECK(values.contains("date and time"));
  CHECK(values.size() > 50);
}

TEST_CASE("the core has no text for people outside core/wording and its files of problems") {
  const std::set<std::string> values = values_of_keys();
  for (const std::string& file : cpp_files(top)) {
    if (!file.starts_with("core/") || may_word(file)) continue;
    const std::size_t found =
        texts_in(lines_of(top / file), reads_keys(file) ? values : std::set<std::string>{});
    if (found > 0)
      FAIL_CHECK(file << " has " << found << " texts: state the fact and word it in core/wording");
  }
}
