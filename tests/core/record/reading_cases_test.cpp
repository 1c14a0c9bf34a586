// Each folder of tests/cases/reading is a log that is awkward in one way, and what must be made of it:
// log.csv, expected.txt, why.txt, and job.toml where a person settled something.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "core/procedure/job_file.h"
#include "core/record/record_file.h"
#include "tests/core/record/record_text.h"

using namespace soakwright;

namespace {

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{file}, {}};
}

std::string what_is_read(const std::filesystem::path& folder) {
  const std::string log = (folder / "log.csv").string();
  if (!std::filesystem::exists(folder / "job.toml")) {
    const auto record = read_record(log, nullptr);
    return record ? text_of(*record.value()) : text_of(record.problems());
  }
  const auto job = read_job((folder / "job.toml").string());
  if (!job) return text_of(job.problems());
  const auto record = read_record(log, &job.value());
  return record ? text_of(*record.value()) : text_of(record.problems());
}

}  // namespace

TEST_CASE("every awkward log is read as its folder says") {
  const std::filesystem::path cases = std::filesystem::path{SOAKWRIGHT_SOURCE_DIR} / "tests/cases/reading";
  std::set<std::filesystem::path> folders;
  for (const auto& entry : std::filesystem::directory_iterator{cases}) folders.insert(entry.path());
  CHECK(folders.size() > 40);
  for (const std::filesystem::path& folder : folders) {
    INFO(folder.filename().string());
    const std::string expected = bytes_of(folder / "expected.txt");
    CHECK_FALSE(bytes_of(folder / "why.txt").empty());
    CHECK_FALSE(expected.empty());
    CHECK(what_is_read(folder) == expected);
  }
}
