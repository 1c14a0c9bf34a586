// SPDX-License-Identifier: GPL-3.0-or-later
// An output that grows: visible meanwhile under another name, whole under its own. Common practice, no
// source.
#include "core/system/growing_file.h"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <catch2/catch.hpp>
#include <sys/stat.h>

using namespace soakwright;
namespace fs = std::filesystem;

namespace {

std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

struct GrowingPlace {
  fs::path folder;
  GrowingPlace() {
    std::string name = (fs::temp_directory_path() / "soakwright-growing-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    folder = name;
  }
  ~GrowingPlace() {
    std::error_code ignored;
    fs::remove_all(folder, ignored);
  }
};

GrowingFile opened(const fs::path& path) {
  auto file = GrowingFile::open(path.string());
  REQUIRE(file.ok());
  return std::move(file).value();
}

}  // namespace

TEST_CASE("the text can be read under .part while it grows, and takes the name at the end") {
  const GrowingPlace place;
  const fs::path path = place.folder / "r.csv";
  std::ofstream(path) << "old";
  fs::permissions(path, fs::perms::owner_read | fs::perms::owner_write);
  {
    GrowingFile file = opened(path);
    CHECK_FALSE(file.append("one\n"));
    CHECK(bytes_of(path) == "old");
    CHECK(bytes_of(path.string() + ".part") == "one\n");
    CHECK_FALSE(file.append("two\n"));
    CHECK_FALSE(file.finish());
  }
  CHECK(bytes_of(path) == "one\ntwo\n");
  CHECK_FALSE(fs::exists(path.string() + ".part"));
  CHECK(fs::status(path).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("without an end the file keeps what it had, and nothing is left beside it") {
  const GrowingPlace place;
  const fs::path path = place.folder / "r.csv";
  std::ofstream(path) << "old";
  {
    GrowingFile file = opened(path);
    CHECK_FALSE(file.append("one\n"));
  }
  CHECK(bytes_of(path) == "old");
  CHECK_FALSE(fs::exists(path.string() + ".part"));
}

TEST_CASE("a symbolic link is followed, and a device is written to directly") {
  const GrowingPlace place;
  fs::create_directory(place.folder / "far");
  fs::create_symlink("far/r.csv", place.folder / "near.csv");
  {
    GrowingFile file = opened(place.folder / "near.csv");
    CHECK_FALSE(file.append("x"));
    CHECK_FALSE(file.finish());
  }
  CHECK(fs::is_symlink(place.folder / "near.csv"));
  CHECK(bytes_of(place.folder / "far/r.csv") == "x");
  GrowingFile null = opened("/dev/null");
  CHECK_FALSE(null.append("x"));
  CHECK_FALSE(null.finish());
  CHECK(fs::is_character_file("/dev/null"));
}

TEST_CASE("what cannot be written is a problem with its path") {
  const GrowingPlace place;
  for (const fs::path& path : {place.folder / "no-folder/r.csv", place.folder}) {
    const auto file = GrowingFile::open(path.string());
    REQUIRE_FALSE(file.ok());
    CHECK(file.problems().front().kind == ProblemKind::cannot_write);
    CHECK(file.problems().front().file == path.string());
  }
  GrowingFile full = opened("/dev/full");
  CHECK(full.append("x"));
}
