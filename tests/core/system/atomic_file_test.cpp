// SPDX-License-Identifier: GPL-3.0-or-later
// The one writer: whole or not at all on disks that fill up, under limits, over links, devices and
// left-overs.
#include "core/system/atomic_file.h"

#include <algorithm>
#include <atomic>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace soakwright;
namespace fs = std::filesystem;

namespace {

class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "soakwright-writer-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  ~Folder() {
    if (mounted_) umount2(path_.c_str(), MNT_DETACH);
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  /// A disk of its own with that many bytes; false where this user may not mount one.
  bool mount_small_disk(const std::string& size) {
    mounted_ = mount("tmpfs", path_.c_str(), "tmpfs", 0, ("size=" + size).c_str()) == 0;
    return mounted_;
  }
  [[nodiscard]] std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(path_)) names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
  }

 private:
  fs::path path_;
  bool mounted_ = false;
};

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

void put(const std::string& path, const std::string& text) {
  std::ofstream out(path, std::ios::binary);
  out << text;
  REQUIRE(out.flush());
}

std::string pattern(std::size_t size) {
  std::string text(size, '\0');
  for (std::size_t i = 0; i < size; ++i) text[i] = static_cast<char>('a' + i % 23);
  return text;
}

/// Refused with 73 and a reason.
void refused(const std::optional<Problem>& problem, const std::string& path) {
  REQUIRE(problem.has_value());
  CHECK(static_cast<int>(problem->kind) == 73);
  CHECK(problem->file == path);
  CHECK(problem->what.starts_with("cannot be written: "));
  CHECK_FALSE(problem->help.empty());
}

}  // namespace

TEST_CASE("a new file has all the bytes and the permissions that the umask leaves") {
  const Folder folder;
  const mode_t before = umask(027);
  for (const std::size_t size : {std::size_t{0}, std::size_t{1}, std::size_t{4096}, std::size_t{3'000'000}}) {
    const std::string path = folder / ("new-" + std::to_string(size));
    CHECK_FALSE(write_file_whole(path, pattern(size)));
    CHECK(bytes_of(path) == pattern(size));
    CHECK(fs::status(path).permissions() == fs::perms(0640));
  }
  umask(before);
  CHECK(folder.names().size() == 4);
}

TEST_CASE("an existing file keeps its permissions and is never seen half written") {
  const Folder folder;
  const std::string path = folder / "r.json";
  put(path, "old");
  fs::permissions(path, fs::perms(0604));
  std::atomic<bool> ended{false};
  std::size_t seen = 0;
  bool torn = false;
  std::thread reader([&] {
    while (!ended) {
      const std::string text = bytes_of(path);
      torn = torn || (text != "old" && text != pattern(700'000));
      ++seen;
    }
  });
  for (int round = 0; round < 20; ++round) CHECK_FALSE(write_file_whole(path, pattern(700'000)));
  ended = true;
  reader.join();
  CHECK(seen > 0);
  CHECK_FALSE(torn);
  CHECK(fs::status(path).permissions() == fs::perms(0604));
  CHECK(folder.names() == std::vector<std::string>{"r.json"});
}

TEST_CASE("a full disk keeps the old file, says so and leaves nothing behind") {
  for (const char* size : {"8k", "64k", "120k"}) {
    Folder folder;
    if (!folder.mount_small_disk(size)) {
      WARN("only root may mount a small disk: run the tests as root for this one");
      return;
    }
    const std::string path = folder / "r.pdf";
    put(path, "old");
    INFO(size);
    refused(write_file_whole(path, pattern(123'351)), path);
    CHECK(bytes_of(path) == "old");
    CHECK(folder.names() == std::vector<std::string>{"r.pdf"});
    refused(write_file_whole(folder / "new.pdf", pattern(123'351)), folder / "new.pdf");
    CHECK(folder.names() == std::vector<std::string>{"r.pdf"});
  }
}

TEST_CASE("a limit on the size of files keeps the old file and says so") {
  const Folder folder;
  const std::string path = folder / "r.pdf";
  put(path, "old");
  const pid_t child = fork();
  if (child == 0) {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{60'000, 60'000};
    setrlimit(RLIMIT_FSIZE, &limit);
    const auto problem = write_file_whole(path, pattern(123'351));
    _exit(problem ? static_cast<int>(problem->kind) : 0);
  }
  int status = 0;
  waitpid(child, &status, 0);
  REQUIRE(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 73);
  CHECK(bytes_of(path) == "old");
  CHECK(folder.names() == std::vector<std::string>{"r.pdf"});
}

TEST_CASE("a name that is no UTF-8 is written as given, and a name may be as long as names can be") {
  const Folder folder;
  for (const std::string& name : {std::string("caf\xE9.pdf"), std::string(255, 'n'), std::string("-"),
                                  std::string("with space\nand line end")}) {
    CHECK_FALSE(write_file_whole(folder / name, "bytes"));
    CHECK(bytes_of(folder / name) == "bytes");
  }
  CHECK(folder.names().size() == 4);
}

TEST_CASE("part files that others left behind never stop a write") {
  const Folder folder;
  const std::string pid = std::to_string(getpid());
  for (int i = 0; i < 2000; ++i)
    put(folder / (".soakwright-" + pid + "-" + std::to_string(i) + ".part"), "left");
  CHECK_FALSE(write_file_whole(folder / "r.json", "bytes"));
  CHECK(bytes_of(folder / "r.json") == "bytes");
  CHECK(folder.names().size() == 2001);
}

TEST_CASE("links are followed, also to what is not there yet; those that lead nowhere are refused") {
  const Folder folder;
  fs::create_directory(folder / "far");
  fs::create_symlink("far/new", folder / "link");
  fs::create_symlink("link", folder / "link-to-link");
  fs::create_symlink("loop", folder / "loop");
  CHECK_FALSE(write_file_whole(folder / "link-to-link", "bytes"));
  CHECK(fs::is_symlink(folder / "link"));
  CHECK(bytes_of(folder / "far/new") == "bytes");
  refused(write_file_whole(folder / "loop", "bytes"), folder / "loop");
  CHECK(fs::is_symlink(folder / "loop"));
}

TEST_CASE("what is no file that can be written is refused") {
  const Folder folder;
  fs::create_directory(folder / "folder");
  for (const std::string& path : {folder / "folder", folder / "nowhere/r.json", std::string("/dev/full"),
                                  std::string("/proc/no-such-file"), std::string()})
    refused(write_file_whole(path, "bytes"), path);
  CHECK(folder.names() == std::vector<std::string>{"folder"});
}

TEST_CASE("a device, a pipe and an open file of the process are written to directly") {
  CHECK_FALSE(write_file_whole("/dev/null", "bytes"));
  CHECK(fs::is_character_file("/dev/null"));

  const Folder folder;
  REQUIRE(mkfifo((folder / "pipe").c_str(), 0600) == 0);
  std::string read;
  std::thread reader([&] { read = bytes_of(folder / "pipe"); });
  CHECK_FALSE(write_file_whole(folder / "pipe", pattern(300'000)));
  reader.join();
  CHECK(read == pattern(300'000));
  CHECK(fs::is_fifo(folder / "pipe"));

  int ends[2];
  REQUIRE(pipe(ends) == 0);
  CHECK_FALSE(write_file_whole("/dev/fd/" + std::to_string(ends[1]), "bytes"));
  char got[5] = {};
  REQUIRE(::read(ends[0], got, sizeof got) == 5);
  CHECK(std::string(got, sizeof got) == "bytes");
  close(ends[0]);
  close(ends[1]);
}

TEST_CASE("two names of one file have one place, whether it is there or not") {
  const Folder folder;
  fs::create_directory(folder / "far");
  fs::create_symlink("far", folder / "near");
  fs::create_symlink("far/new", folder / "link");
  const std::string place = written_place(folder / "far/new");
  CHECK_FALSE(place.empty());
  for (const char* other : {"near/new", "link", "far/../far/new", "./near/./new"})
    CHECK(written_place(folder / other) == place);
  CHECK(written_place(folder / "far/other") != place);
}

TEST_CASE("a signal while a file is written removes the part file and keeps the old one") {
  const Folder folder;
  const std::string path = folder / "r.json";
  put(path, "old");
  for (int round = 0; round < 20; ++round) {
    const auto before = std::signal(SIGTERM, [](int) {
      remove_part_file_at_signal();
      _exit(9);
    });
    const pid_t child = fork();
    if (child != 0) std::signal(SIGTERM, before);
    if (child == 0) {
      const std::string text = pattern(2'000'000);
      for (;;) static_cast<void>(write_file_whole(path, text));
    }
    usleep(static_cast<useconds_t>(2000 + 1700 * round));
    kill(child, SIGTERM);
    int status = 0;
    waitpid(child, &status, 0);
    REQUIRE(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 9);
    const std::string text = bytes_of(path);
    CHECK((text == "old" || text == pattern(2'000'000)));
    CHECK(folder.names() == std::vector<std::string>{"r.json"});
  }
}
