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

/// The names of all files and folders, with and without ending.
std::set<std::string> names_in_the_tree() {
  std::set<std::string> names;
  for (const char* folder : {"core", "app", "tests", "resources"})
    for (const auto& entry : std::filesystem::recursive_directory_iterator(top / folder)) {
      names.insert(entry.path().filename().string());
      names.insert(entry.path().stem().string());
    }
  return names;
}

std::string whole_page() {
  std::ifstream file(top / "DEVELOPERS.md");
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

TEST_CASE("every path that DEVELOPERS.md names is there") {
  static const std::regex named(
      "`((?:core|app|tests|resources|sample-logs|\\.github)(?:/[A-Za-z0-9_.-]+)+/?)`");
  const std::string text = whole_page();
  std::size_t checked = 0;
  for (std::sregex_iterator match(text.begin(), text.end(), named), end; match != end; ++match) {
    const std::filesystem::path path = top / (*match)[1].str();
    INFO(path.string());
    // A file may be named without its ending, as a header and its source are.
    CHECK((std::filesystem::exists(path) || std::filesystem::exists(path.string() + ".h") ||
           std::filesystem::exists(path.string() + ".cpp")));
    ++checked;
  }
  CHECK(checked > 30);
}

TEST_CASE("every file that DEVELOPERS.md names on the way of a record is there") {
  static const std::regex named("`([a-z0-9]+(?:_[a-z0-9]+)*)`");
  const std::string text = section("The way of a record");
  const std::set<std::string> names = names_in_the_tree();
  std::size_t checked = 0;
  for (std::sregex_iterator match(text.begin(), text.end(), named), end; match != end; ++match) {
    INFO((*match)[1].str());
    CHECK(names.contains((*match)[1].str()));
    ++checked;
  }
  CHECK(checked > 80);
}

TEST_CASE("the version is the same wherever it is written by hand") {
  const std::string version = SOAKWRIGHT_VERSION;
  const auto text_of_file = [](const char* path) {
    std::ifstream file(top / path);
    return std::string{std::istreambuf_iterator<char>(file), {}};
  };
  CHECK(text_of_file(".github/CITATION.cff").find("\nversion: " + version + "\n") != std::string::npos);
  const std::string changes = text_of_file("resources/manual/changes.md");
  const std::size_t newest = changes.find("\n## ");
  REQUIRE(newest != std::string::npos);
  CHECK(changes.compare(newest, 4 + version.size() + 1, "\n## " + version + ",") == 0);
}

TEST_CASE("a kind of requirement is added in at most ten files, and each file named is there") {
  const std::set<std::string> files = files_named_in(section("To add a kind of requirement"));
  CHECK(files.size() >= 5);
  CHECK(files.size() <= 10);
  for (const std::string& file : files) {
    INFO(file);
    CHECK(std::filesystem::is_regular_file(top / file));
  }
}
