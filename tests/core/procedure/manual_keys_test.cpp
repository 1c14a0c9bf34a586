// SPDX-License-Identifier: GPL-3.0-or-later
// The manual's tables of keys (resources/manual/keys.md) are what the program accepts: a file with a key that
// cannot be is refused, and the refusal names the keys of the table.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "core/procedure/review/review.h"
#include "core/procedure/rules/rule_file.h"

namespace soakwright {
namespace {

/// A line of a table of the page: the key of its first cell, whether it is bold, and the rest.
struct KeyLine {
  std::string key;
  bool required = false;
  std::string rest;
};

std::string page() {
  std::ifstream file(std::filesystem::path(SOAKWRIGHT_SOURCE_DIR) / "resources/manual/keys.md");
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// The lines of the table under `### heading`; empty where there is no such heading.
std::vector<KeyLine> table_under(const std::string& heading) {
  std::vector<KeyLine> lines;
  std::istringstream in(page());
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("#")) inside = line == "### " + heading;
    if (!inside || !line.starts_with("| ")) continue;
    const std::size_t open = line.find('`');
    const std::size_t next_cell = line.find(" | ");
    if (open == std::string::npos || open > next_cell) continue;  // the head of the table
    const std::size_t close = line.find('`', open + 1);
    std::string rest = line.substr(next_cell + 3);
    if (const std::size_t bar = rest.find("\\|"); bar != std::string::npos) rest.erase(bar, 1);
    lines.push_back({line.substr(open + 1, close - open - 1), line.starts_with("| **"), rest});
  }
  return lines;
}

std::set<std::string> headings() {
  std::set<std::string> all;
  std::istringstream in(page());
  for (std::string line; std::getline(in, line);)
    if (line.starts_with("### ")) all.insert(line.substr(4));
  return all;
}

template <typename T>
Problems problems_of(const Result<T>& result) {
  return result ? Problems{} : result.problems();
}

Problems refusals_of(const std::string& text) {
  if (text.find("\"procedure 1\"") != std::string::npos)
    return problems_of(parse_procedure(text, "file.toml"));
  if (text.find("\"job 1\"") != std::string::npos) return problems_of(parse_job(text, "file.toml"));
  if (text.find("\"review 1\"") != std::string::npos) return problems_of(parse_review(text, "file.toml"));
  return problems_of(parse_rule(text, "file.toml"));
}

constexpr const char* kImpossible = "qqqqqqqqqqqqqqqqqqqq";

/// What a message lists behind "known here"; empty where it lists nothing.
std::vector<std::string> known_here(const std::string& help) {
  constexpr std::string_view kKnown = "known here: ";
  std::vector<std::string> words;
  const std::size_t list = help.find(kKnown);
  if (list == std::string::npos) return words;
  std::string_view rest = std::string_view{help}.substr(list + kKnown.size());
  for (std::size_t end = rest.find(", "); end != std::string_view::npos; end = rest.find(", ")) {
    words.emplace_back(rest.substr(0, end));
    rest.remove_prefix(end + 2);
  }
  words.emplace_back(rest);
  return words;
}

/// The keys that the program knows where `text` has the impossible one.
std::set<std::string> known_keys(const std::string& text) {
  std::set<std::string> keys;
  for (const Problem& problem : refusals_of(text)) {
    if (problem.what.find(kImpossible) == std::string::npos) continue;
    for (const std::string& key : known_here(problem.help)) keys.insert(key);
  }
  return keys;
}

/// What the program says is missing there.
std::set<std::string> missing_keys(const std::string& text) {
  std::set<std::string> keys;
  for (const Problem& problem : refusals_of(text)) {
    const std::size_t end = problem.what.find("` is missing in ");
    if (end != std::string::npos && problem.what.starts_with("`"))
      keys.insert(problem.what.substr(1, end - 1));
  }
  return keys;
}

struct Table {
  const char* heading;
  std::string text;  ///< of a file with the impossible key in that table and no other key in it
};

/// Each in a file that lacks nothing elsewhere.
std::vector<Table> tables() {
  const std::string key = std::string(kImpossible) + " = 1\n";
  const std::string procedure = "soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"C\"\n";
  const std::string stage = "[[stage]]\nkind = \"heat\"\nrate_max = 100\n";
  const std::string job = "soakwright = \"job 1\"\n";
  const std::string review = "soakwright = \"review 1\"\n";
  const std::string rule =
      "soakwright = \"rule 1\"\nname = \"a\"\ntitle = \"a\"\nunit = \"C\"\nsource = \"a\"\nedition = \"a\"\n"
      "clause = \"a\"\nflag = \"seen\"\n";
  return {
      {"Procedure: top of the file", "soakwright = \"procedure 1\"\n" + key + stage},
      {"Procedure: [evaluation]", procedure + "[evaluation]\n" + key + stage},
      {"Procedure: excursion_allowed as a table",
       procedure + "[evaluation]\nexcursion_allowed = { qqqqqqqqqqqqqqqqqqqq = 1 }\n" + stage},
      {"Procedure: [record]", procedure + "[record]\n" + key + stage},
      {"Procedure: [[stage]] with kind = \"heat\" or \"cool\"",
       procedure + "[[stage]]\nkind = \"heat\"\n" + key},
      {"Procedure: [[stage]] with kind = \"heat\" or \"cool\"",
       procedure + "[[stage]]\nkind = \"cool\"\n" + key},
      {"Procedure: rate_max as a table",
       procedure + "[[stage]]\nkind = \"heat\"\nrate_max = { qqqqqqqqqqqqqqqqqqqq = 1 }\n"},
      {"Procedure: [[stage]] with kind = \"hold\"", procedure + "[[stage]]\nkind = \"hold\"\n" + key},
      {"Procedure: time_min as a table",
       procedure + "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = { qqqqqqqqqqqqqqqqqqqq = 1 }\n"},
      {"Procedure: [[stage]] with kind = \"maintain\"", procedure + "[[stage]]\nkind = \"maintain\"\n" + key},
      {"Job: top of the file", job + key},
      {"Job: [[weld]]", job + "[[weld]]\n" + key},
      {"Job: [composition]", job + "[composition]\n" + key},
      {"Job: [[band]]", job + "[[band]]\n" + key},
      {"Job: [[thermocouple]]", job + "[[thermocouple]]\n" + key},
      {"Job: [[exclude]]", job + "[[exclude]]\n" + key},
      {"Job: [[confirm]]", job + "[[confirm]]\n" + key},
      {"Job: [[period]]", job + "[[period]]\n" + key},
      {"Job: [[remark]]", job + "[[remark]]\n" + key},
      {"Job: [[previous_record]]", job + "[[previous_record]]\n" + key},
      {"Job: [import]", job + "[import]\n" + key},
      {"Job: [time_range]", job + "[time_range]\n" + key},
      {"Job: [recorder]", job + "[recorder]\n" + key},
      {"Job: [hydrogen]", job + "[hydrogen]\n" + key},
      {"Job: [qualified]", job + "[qualified]\n" + key},
      {"Job: [company]", job + "[company]\n" + key},
      {"Review: top of the file", review + key},
      {"Review: [[finding]]", review + "[[finding]]\n" + key},
      {"Review: [[person]]", review + "[[person]]\n" + key},
      {"Rule: top of the file", "soakwright = \"rule 1\"\n" + key + stage + "flag = \"seen\"\n"},
      {"Rule: [[stage]] with kind = \"given-hold\"", rule + "[[stage]]\nkind = \"given-hold\"\n" + key},
  };
}

}  // namespace

TEST_CASE("every key that the program accepts is in the manual's tables, and no other") {
  for (const Table& table : tables()) {
    INFO(table.heading << "\n" << table.text);
    std::set<std::string> shown;
    for (const KeyLine& line : table_under(table.heading)) shown.insert(line.key);
    CHECK(shown == known_keys(table.text));
  }
}

TEST_CASE("a key that must be there is bold in the manual's tables") {
  for (const Table& table : tables()) {
    std::set<std::string> shown;
    for (const KeyLine& line : table_under(table.heading))
      // These two are in the text: without them nothing could be said of the table's other keys.
      if (line.required && line.key != "kind" && line.key != "soakwright") shown.insert(line.key);
    std::set<std::string> missing = missing_keys(table.text);
    // Each has a message of its own, and stands in the text of this table.
    const std::string heading = table.heading;
    if (heading == "Procedure: top of the file" || heading == "Rule: top of the file")
      missing.insert("stage");
    INFO(table.heading << "\n" << table.text);
    CHECK(shown == missing);
  }
}

TEST_CASE("every table of keys in the manual is compared with the program's") {
  std::set<std::string> compared;
  for (const Table& table : tables()) compared.insert(table.heading);
  CHECK(compared == headings());
}

TEST_CASE("the words that a key may have are all in its line of the manual") {
  int words = 0;
  for (const Table& table : tables()) {
    for (const KeyLine& line : table_under(table.heading)) {
      if (line.key == "soakwright" || line.key == "kind") continue;
      std::string text = table.text;
      const std::string as_line = std::string(kImpossible) + " = 1";
      text.replace(text.find(as_line), as_line.size(), line.key + " = \"" + kImpossible + "\"");
      for (const Problem& problem : refusals_of(text)) {
        if (!problem.what.starts_with("`" + line.key + "` ")) continue;
        for (const std::string& word : known_here(problem.help)) {
          INFO(table.heading << ": " << line.key << ": " << word << "\n" << problem.help);
          CHECK(line.rest.find("`\"" + word + "\"`") != std::string::npos);
          ++words;
        }
      }
    }
  }
  CHECK(words > 40);
}

}  // namespace soakwright
