// SPDX-License-Identifier: GPL-3.0-or-later
// Where output goes: files whole or not at all, devices and links, standard output for one thing only.
#include <array>
#include <filesystem>
#include <string>
#include <thread>

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <unistd.h>

#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

const std::string job = source_file("sample-logs/w-117-stress-relief/job.toml");

Ran check_into(const std::string& json) { return run_soakwright({"check", "--job", job, "--json", json}); }

const std::string& result() {
  static const std::string text = run_soakwright({"check", "--job", job, "--json", "-"}).out;
  return text;
}

}  // namespace

TEST_CASE("the result is JSON, alone on standard output where it was asked for there") {
  const auto parsed = nlohmann::json::parse(result());
  CHECK(parsed["soakwright"] == "result 1");
  CHECK(parsed["verdict"] == "met");
  CHECK(run_soakwright({"check", "--job", job, "--json", "-"}).err.empty());
}

TEST_CASE("the same input gives the same bytes, in any surroundings") {
  for (const Variables& surroundings :
       {Variables{}, Variables{{"LC_ALL", "C"}, {"TZ", "UTC"}},
        Variables{{"LC_ALL", "de_DE.UTF-8"}, {"TZ", "Asia/Kolkata"}},
        Variables{{"LC_ALL", "tr_TR.UTF-8"}, {"TZ", "America/St_Johns"}, {"COLUMNS", "40"}}}) {
    CHECK(run_soakwright({"check", "--job", job, "--json", "-"}, surroundings).out == result());
    CHECK(run_soakwright({"check", "--job", job}, surroundings).out ==
          run_soakwright({"check", "--job", job}).out);
  }
}

TEST_CASE("a new file is written whole and nothing is left beside it") {
  const TemporaryFolder folder;
  CHECK(check_into(folder.file("result.json")).exit_code == 0);
  CHECK(folder.names() == std::vector<std::string>{"result.json"});
  CHECK(text_of(folder.file("result.json")) == result());
}

TEST_CASE("an existing file is replaced and keeps its permissions") {
  const TemporaryFolder folder;
  const std::string file = folder.with("result.json", "old");
  fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
  CHECK(check_into(file).exit_code == 0);
  CHECK(text_of(file) == result());
  CHECK(fs::status(file).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("a symbolic link is followed, also to a file that is not there yet") {
  const TemporaryFolder folder;
  fs::create_directory(folder.file("far"));
  for (const char* name : {"there.json", "not-yet.json"}) {
    if (std::string(name) == "there.json") static_cast<void>(folder.with("far/there.json", "old"));
    const std::string link = folder.file(std::string("link-") + name);
    fs::create_symlink(fs::path("far") / name, link);
    CHECK(check_into(link).exit_code == 0);
    CHECK(fs::is_symlink(link));
    CHECK(text_of(folder.file(std::string("far/") + name)) == result());
  }
}

TEST_CASE("a path that cannot be written to answers 73 and leaves what was there") {
  const TemporaryFolder folder;
  fs::create_directory(folder.file("folder"));
  fs::create_symlink("loop", folder.file("loop"));
  for (const std::string& path :
       {folder.file("no-folder/result.json"), folder.file("folder"), folder.file("loop"),
        std::string("/dev/full"), std::string("/proc/no-such-file")}) {
    const Ran ran = check_into(path);
    INFO(path << "\n" << ran.err);
    CHECK(ran.exit_code == 73);
    CHECK_THAT(ran.err, StartsWith("soakwright: " + path + ": cannot be written: ") && Contains("; "));
  }
  CHECK(folder.names() == std::vector<std::string>{"folder", "loop"});
  CHECK(fs::is_empty(folder.file("folder")));
}

TEST_CASE("a file that may not be written to is left as it is") {
  if (geteuid() == 0) {
    WARN("root may write to everything: run the tests as a user for this one");
    return;
  }
  const TemporaryFolder folder;
  const std::string file = folder.with("result.json", "old");
  fs::permissions(file, fs::perms::owner_read);
  CHECK(check_into(file).exit_code == 73);
  CHECK(text_of(file) == "old");
}

TEST_CASE("a device and a pipe are written to directly") {
  CHECK(check_into("/dev/null").exit_code == 0);
  CHECK(fs::is_character_file("/dev/null"));

  const TemporaryFolder folder;
  const std::string pipe = folder.file("pipe");
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  std::string read;
  std::thread reader([&] { read = text_of(pipe); });
  const Ran ran = check_into(pipe);
  // A program that did not open the pipe would leave the reader waiting.
  const int unblock = open(pipe.c_str(), O_WRONLY | O_NONBLOCK);
  if (unblock >= 0) close(unblock);
  reader.join();
  CHECK(ran.exit_code == 0);
  CHECK(fs::is_fifo(pipe));
  CHECK(read == result());
}

TEST_CASE("standard output that takes nothing answers 73") {
  for (const auto& arguments :
       {std::vector<std::string>{"check", "--job", job},
        std::vector<std::string>{"check", "--job", job, "--json", "-"}, std::vector<std::string>{"--help"}}) {
    const Ran ran = run_soakwright(arguments, {}, "/dev/full");
    CHECK(ran.exit_code == 73);
    CHECK_THAT(ran.err, StartsWith("soakwright: standard output: cannot be written: "));
  }
}
