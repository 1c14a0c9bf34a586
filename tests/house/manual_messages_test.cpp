// SPDX-License-Identifier: GPL-3.0-or-later
// The manual's page of messages (resources/manual/messages.md) has every sentence, file warning, suspicion
// and exit code of the program, and no message that the program does not have.
#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"
#include "tests/house/source_tree.h"

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kValue = "…";

std::string all_of(const std::string& path) { return text_of(source_file(path)); }

/// The first cells of the tables of the page: under which `##` and, where there is one, `###` heading.
struct Row {
  std::string part;
  std::string section;
  std::string cell;
};

std::vector<Row> rows() {
  std::vector<Row> all;
  std::istringstream in(all_of("resources/manual/messages.md"));
  std::string part, section;
  for (std::string line, before; std::getline(in, line); before = line) {
    if (line.starts_with("## ")) {
      part = line.substr(3);
      section.clear();
    } else if (line.starts_with("### ")) {
      section = line.substr(4);
    } else if (line.starts_with("| ")) {
      all.push_back({part, section, line.substr(2, line.find(" | ", 2) - 2)});
    } else if (line.starts_with("| ---") || line.starts_with("|---")) {
      all.pop_back();
    }
  }
  return all;
}

bool is_head(const std::string& cell) {
  static const std::set<std::string> heads{"where it is", "code", "sentence", "message", "line", "---"};
  return heads.contains(cell);
}

std::set<std::string> cells_of(const std::string& part) {
  std::set<std::string> cells;
  for (const Row& row : rows())
    if (row.part == part && !is_head(row.cell)) cells.insert(row.cell);
  return cells;
}

std::string without_backticks(std::string text) {
  std::erase(text, '`');
  return text;
}

/// Neighbouring string literals as one, as the compiler sees them, and quotes without their backslash.
std::string with_joined_literals(std::string text) {
  static const std::regex seam("\"\\s*\n\\s*\"");
  text = std::regex_replace(text, seam, "");
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] != '\\' || i + 1 == text.size() || text[i + 1] != '"') out += text[i];
  return out;
}

/// `{0}` and `{0:one|many}` as they are shown on the page.
std::string as_shown(const std::string& pattern) {
  static const std::regex counted(R"(\{[0-9]+:[^|}]*\|([^}]*)\})");
  static const std::regex plain(R"(\{[0-9]+\})");
  return std::regex_replace(std::regex_replace(pattern, counted, "… $1"), plain, "…");
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

/// The files that have the words of the sentences.
std::vector<std::string> pattern_files() {
  std::vector<std::string> files;
  for (const std::string& file : cpp_files(source_file("")))
    if (file.starts_with("core/wording/patterns/")) files.push_back(file);
  return files;
}

std::set<std::string> sentences_of_the_program() {
  static const std::regex statement(R"(case Sentence::\w+:[^\n]*\n\s*return \"([^;]*(?:;[^\n;]*)*)\";)");
  std::set<std::string> sentences;
  for (const std::string& file : pattern_files()) {
    const std::string text = with_joined_literals(all_of(file));
    for (std::sregex_iterator match(text.begin(), text.end(), statement), end; match != end; ++match)
      sentences.insert(as_shown((*match)[1]));
  }
  return sentences;
}

std::set<std::string> matches_in(const std::string& text, const std::regex& expression) {
  std::set<std::string> found;
  for (std::sregex_iterator match(text.begin(), text.end(), expression), end; match != end; ++match)
    found.insert((*match)[1]);
  return found;
}

/// Joined literals of every file that may word a message.
const std::string& sources() {
  static const std::string text = [] {
    std::string all;
    for (const std::string& file : cpp_files(source_file("")))
      if (!file.starts_with("tests/")) all += with_joined_literals(all_of(file));
    return all;
  }();
  return text;
}

/// What stands between the values of a message.
std::vector<std::string> fixed_parts(const std::string& message) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  while (begin <= message.size()) {
    const std::size_t end = std::min(message.find(kValue, begin), message.size());
    std::string part = message.substr(begin, end - begin);
    while (!part.empty() && std::string_view{" :,."}.find(part.back()) != std::string_view::npos)
      part.pop_back();
    while (!part.empty() && part.front() == ' ') part.erase(0, 1);
    if (!part.empty()) parts.push_back(part);
    begin = end + kValue.size();
  }
  return parts;
}

}  // namespace

TEST_CASE("every sentence of the program is in the manual, and no other") {
  const std::set<std::string> said = sentences_of_the_program();
  std::size_t worded = 0;
  for (const std::string& file : pattern_files()) worded += count_of(all_of(file), "case Sentence::");
  CHECK(said.size() == worded);
  CHECK(worded > 200);
  std::set<std::string> shown = cells_of("Sentences of the evaluation");
  shown.merge(cells_of("Sentences of file warnings"));
  for (const std::string& sentence : said) {
    INFO("Add the line: | " << sentence << " | … |");
    CHECK(shown.contains(sentence));
  }
  for (const std::string& sentence : shown) {
    INFO("The program does not say: " << sentence);
    CHECK(said.contains(sentence));
  }
}

TEST_CASE("every code of a file warning is in the manual, and no other") {
  // Every way in which the sources begin a notice.
  static const std::regex code(
      R"re((?:notices\.push_back\(\s*\{|Notice \w+\{|add_notice\(|add_line_notice\(\s*notices,|\bnote\(|kOutside =)\s*"([a-z]+(?:-[a-z]+)*)")re");
  static const std::regex code_of_cells(R"re((?:\badd\(|return \{)\s*"([a-z]+(?:-[a-z]+)*)")re");
  std::set<std::string> codes = matches_in(all_of("core/record/column_notices.cpp"), code_of_cells);
  for (const std::string& file : cpp_files(source_file("")))
    if (file.starts_with("core/record/") || file == "core/evaluate/suspect_findings.cpp")
      codes.merge(matches_in(all_of(file), code));
  std::set<std::string> shown;
  for (const std::string& cell : cells_of("File warnings")) shown.insert(without_backticks(cell));
  CHECK(shown == codes);
  // The list in the page on formats.
  const std::string formats = all_of("resources/manual/formats.md");
  const std::size_t begin = formats.find("File warnings have these codes: `");
  REQUIRE(begin != std::string::npos);
  const std::size_t open = formats.find('`', begin);
  std::istringstream words(formats.substr(open + 1, formats.find('`', open + 1) - open - 1));
  std::set<std::string> listed;
  for (std::string word; words >> word;) listed.insert(word);
  CHECK(listed == codes);
}

TEST_CASE("every suspicion of a thermocouple is in the manual's pages, and no other") {
  const std::string text = all_of("core/phases/suspects/suspect_word.cpp");
  const std::size_t begin = text.find("suspect_word(");
  REQUIRE(begin != std::string::npos);
  const auto codes =
      matches_in(text.substr(begin, text.find("\n}", begin) - begin), std::regex("return \"([a-z]+)\""));
  CHECK(codes.size() >= 9);
  std::set<std::string> shown;
  for (const std::string& cell : cells_of("Suspect thermocouples")) shown.insert(without_backticks(cell));
  CHECK(shown == codes);
  const std::string measurements = all_of("resources/manual/measurements.md");
  const std::size_t table = measurements.find("| suspect |");
  REQUIRE(table != std::string::npos);
  CHECK(matches_in(measurements.substr(table), std::regex("\n\\| `([a-z]+)` \\|")) == codes);
}

TEST_CASE("every exit code of a problem is in the manual, and no other") {
  const auto codes = matches_in(all_of("core/problems/problem.h"), std::regex("\n  [a-z_]+ = ([0-9]+),"));
  CHECK(codes.size() >= 6);
  CHECK(cells_of("Exit codes") == codes);
}

TEST_CASE("every message that the manual explains is in the sources") {
  std::size_t checked = 0;
  for (const char* part : {"Errors", "Messages of a batch", "Lines of verify"})
    for (const std::string& message : cells_of(part))
      for (const std::string& fixed : fixed_parts(message)) {
        INFO(part << ": " << message << ": '" << fixed << "'");
        CHECK(sources().find(fixed) != std::string::npos);
        ++checked;
      }
  CHECK(checked > 80);
}

TEST_CASE("a message that says what to write in a file names a key that there is") {
  static const std::regex first_cell("\n\\| (?:\\*\\*)?`([a-zA-Z_0-9]+)`");
  static const std::regex written("`([a-z_0-9]+) = ");
  const std::set<std::string> keys = matches_in(all_of("resources/manual/keys.md"), first_cell);
  CHECK(keys.size() > 80);
  std::set<std::string> named = matches_in(sources(), written);
  named.erase("key");  // how any line is written: `key = value`
  CHECK(named.size() > 8);
  for (const std::string& key : named) {
    INFO(key);
    CHECK(keys.contains(key));
  }
}
