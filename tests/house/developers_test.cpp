// SPDX-License-Identifier: GPL-3.0-or-later
// DEVELOPERS.md is kept true: what it tells a newcomer to open is there.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <string>

#include <catch2/catch.hpp>

namespace {

const std::filesystem::path top = SOAKWRIGHT_SOURCE_DIR;

/// The section under `heading`, to the next one.
std::string section(const std::string& heading) {
  std::ifstream file(top / "DEVELOPERS.md");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const std::size_t begin = text.find("\n## " + heading);
  if (begin == std::string::npos) return {};
  return text.substr(begin, text.find("\n## ", begin + 1) - begin);
}

std::set<std::string> files_named_in(const std::string& text) {
  static const std::regex named("`((?:core|app|tests)/[a-z0-9_/]+\\.[a-z]+)`");
  std::set<std::string> files;
  for (std::sregex_iterator match(text.begin(), text.end(), named), end; match != end; ++match)
    files.insert((*match)[1]);
  return files;
}

}  // namespace

TEST_CASE("a kind of requirement is added in at most ten files, and each file named is there") {
  const std::set<std::string> files = files_named_in(section("To add a kind of requirement"));
  CHECK(files.size() >= 5);
  CHECK(files.size() <= 10);
  for (const std::string& file : files) {
    INFO(file);
    CHECK(std::filesystem::is_regular_file(top / file));
  }
}
