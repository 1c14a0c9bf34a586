// SPDX-License-Identifier: GPL-3.0-or-later
// The TOML examples of README and manual are read by the program as they stand.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "core/procedure/rules/rule_file.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

std::string text_of_file(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

struct Example {
  std::string where;  ///< file and line of the block's first line
  std::string text;
};

std::vector<Example> toml_blocks(const fs::path& path) {
  std::vector<Example> blocks;
  const std::string text = text_of_file(path);
  const std::string open = "\n```toml\n";
  for (std::size_t at = text.find(open); at != std::string::npos; at = text.find(open, at)) {
    const std::size_t begin = at + open.size();
    const std::size_t end = text.find("\n```", begin);
    REQUIRE(end != std::string::npos);
    const auto line = std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(begin), '\n') + 1;
    blocks.push_back(
        {path.filename().string() + ":" + std::to_string(line), text.substr(begin, end - begin + 1)});
    at = end;
  }
  return blocks;
}

std::string said(const Problems& problems) {
  std::string all;
  for (const Problem& problem : problems) all += problem.text() + '\n';
  return all;
}

}  // namespace

TEST_CASE("every TOML example of README and manual is read as it stands") {
  const fs::path top = SOAKWRIGHT_SOURCE_DIR;
  std::vector<fs::path> pages{top / "README.md"};
  for (const auto& entry : fs::directory_iterator(top / "resources" / "manual"))
    pages.push_back(entry.path());
  int procedures = 0, jobs = 0, reviews = 0, rules = 0;
  for (const fs::path& page : pages) {
    for (const Example& example : toml_blocks(page)) {
      INFO(example.where);
      if (example.text.find("\"procedure 1\"") != std::string::npos) {
        const auto read = parse_procedure(example.text, "example.toml");
        if (!read) FAIL(said(read.problems()));
        ++procedures;
      } else if (example.text.find("\"job 1\"") != std::string::npos) {
        const auto read = parse_job(example.text, "example.toml");
        if (!read) FAIL(said(read.problems()));
        ++jobs;
      } else if (example.text.find("\"rule 1\"") != std::string::npos) {
        const auto read = parse_rule(example.text, "example.toml");
        if (!read) FAIL(said(read.problems()));
        ++rules;
      } else {
        REQUIRE(example.text.find("\"review 1\"") != std::string::npos);
        const auto read = parse_review(example.text, "example.toml");
        if (!read) FAIL(said(read.problems()));
        ++reviews;
      }
    }
  }
  CHECK(procedures >= 2);
  CHECK(jobs >= 2);
  CHECK(reviews >= 1);
  CHECK(rules >= 1);
}

}  // namespace soakwright
