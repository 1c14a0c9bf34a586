// SPDX-License-Identifier: GPL-3.0-or-later
// Files that cannot be opened: every kind of file answers alike, with exit code 66.
#include "core/procedure/toml/text_file.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>
#include <sys/stat.h>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"

using namespace soakwright;
namespace fs = std::filesystem;

namespace {

/// An empty folder of this test's own.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "soakwright-text-file-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() { fs::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::string with(const std::string& name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
    return (path_ / name).string();
  }
  [[nodiscard]] std::string name(const std::string& name) const { return (path_ / name).string(); }

 private:
  fs::path path_;
};

template <typename T>
void check_cannot_open(const Result<T>& result, const std::string& path, const std::string& what) {
  INFO(path);
  REQUIRE_FALSE(result.ok());
  REQUIRE(result.problems().size() == 1);
  CHECK(result.problems()[0].kind == ProblemKind::cannot_open);
  CHECK(result.problems()[0].file == path);
  CHECK_THAT(result.problems()[0].what, Catch::Contains(what));
  CHECK_FALSE(result.problems()[0].help.empty());
}

}  // namespace

TEST_CASE("a file that is not there, a folder and a path through a file cannot be opened") {
  const Folder folder;
  const std::string file = folder.with("a.toml", "");
  struct Row {
    std::string path;
    const char* what;
  };
  for (const Row& row : {Row{folder.name("none.toml"), "no such file"}, Row{folder.name(""), "a folder"},
                         Row{file + "/b.toml", "no such file"}, Row{"", "empty"}}) {
    check_cannot_open(read_text_file(row.path), row.path, row.what);
    check_cannot_open(read_procedure(row.path), row.path, row.what);
    check_cannot_open(read_job(row.path), row.path, row.what);
    check_cannot_open(read_review(row.path), row.path, row.what);
  }
}

TEST_CASE("a pipe that nobody writes to and a device are refused at once") {
  const Folder folder;
  const std::string pipe = folder.name("pipe.toml");
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  for (const std::string& path : {pipe, std::string{"/dev/zero"}}) {
    check_cannot_open(read_procedure(path), path, "a pipe or a device");
    check_cannot_open(read_job(path), path, "a pipe or a device");
    check_cannot_open(read_review(path), path, "a pipe or a device");
  }
}

TEST_CASE("the bytes of a file come as they are") {
  const Folder folder;
  const std::string bytes{"a\r\n\0\xB0", 5};
  CHECK(read_text_file(folder.with("bytes", bytes)).value() == bytes);
}

TEST_CASE("a file read from disk says its path in problems and in the value") {
  const Folder folder;
  const std::string path = folder.with("htp.toml",
                                       "soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"C\"\n"
                                       "[[stage]]\nkind = \"cool\"\nrate_max = 180\n");
  REQUIRE(read_procedure(path).ok());
  CHECK(read_procedure(path).value().file == path);
  CHECK(read_job(path).problems()[0].file == path);
  CHECK(read_job(path).problems()[0].kind == ProblemKind::bad_input);
}

TEST_CASE("a file far larger than a person writes is not read to its end") {
  const Folder folder;
  const std::string path = folder.with("large.toml", std::string(std::size_t{17} << 20U, '#'));
  const auto result = read_text_file(path);
  REQUIRE_FALSE(result.ok());
  CHECK(result.problems()[0].kind == ProblemKind::bad_input);
  CHECK_THAT(result.problems()[0].what, Catch::Contains("larger than 16 MB"));
}
