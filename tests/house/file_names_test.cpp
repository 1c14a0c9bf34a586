// SPDX-License-Identifier: GPL-3.0-or-later
// Names: each says what the file does, and no two C++ files share one.
#include <algorithm>
#include <filesystem>
#include <map>

#include <catch2/catch.hpp>

#include "tests/house/source_tree.h"

namespace fs = std::filesystem;

namespace {

const fs::path top = SOAKWRIGHT_SOURCE_DIR;

}  // namespace

TEST_CASE("no two C++ files of different folders share a base name") {
  std::map<std::string, fs::path> folder_of;
  for (const std::string& file : cpp_files(top)) {
    const fs::path path = file;
    const auto [place, added] = folder_of.emplace(path.stem().string(), path.parent_path());
    if (!added && place->second != path.parent_path())
      FAIL_CHECK(file << " has its name from " << place->second.string() << "/" << path.stem().string());
  }
  CHECK(folder_of.size() > 20);
}

TEST_CASE("no file is called after nothing") {
  for (const std::string& file : cpp_files(top)) {
    const std::string name = fs::path(file).stem().string();
    for (const char* word : {"util", "helper", "manager", "common", "misc"}) {
      INFO(file << " says nothing of what it does: " << word);
      CHECK(name.find(word) == std::string::npos);
    }
  }
}

TEST_CASE("test sources lie where what they test lies, and are named after it") {
  for (const std::string& file : cpp_files(top)) {
    if (!file.starts_with("tests/core/") && !file.starts_with("tests/app/")) continue;
    const fs::path folder = fs::path(file).parent_path().lexically_relative("tests");
    INFO(file << ": there is no folder " << folder.string());
    CHECK(fs::is_directory(top / folder));
  }
}

TEST_CASE("heavy headers are read by source files only") {
  for (const std::string& file : cpp_files(top)) {
    if (!file.ends_with(".h")) continue;
    for (const IncludeLine& include : includes_in(lines_of(top / file))) {
      for (const char* heavy : {"toml++/", "nlohmann/", "CLI/", "qcustomplot", "fast_float/", "catch2/"}) {
        // What makes records and procedures for tests fails the test itself where it cannot.
        if (file.starts_with("tests/") && include.target.starts_with("catch2/")) continue;
        // Layers of the chart are the plot library's own classes; that folder reads its header precompiled.
        if (file.starts_with("app/gui/chart/") && include.target == "qcustomplot.h") continue;
        INFO(file << ":" << include.line << " brings " << include.target << " to all who include it");
        CHECK(include.target.find(heavy) == std::string::npos);
      }
    }
  }
}
