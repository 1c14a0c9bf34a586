// SPDX-License-Identifier: GPL-3.0-or-later
// Folders as archives have them: links, loops, odd names, what may not be read, results of earlier batches.
#include <filesystem>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <unistd.h>

#include "tests/app/cli/made_logs.h"
#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Words = std::vector<std::string>;
using Json = nlohmann::json;

namespace {

struct Shelf {
  TemporaryFolder folder;
  std::string procedure = folder.with("p.toml", procedure_of_an_hour());
  void add(const std::string& name, const std::string& text = log_of_hold(70)) const {
    fs::create_directories(fs::path(folder.file(name)).parent_path());
    static_cast<void>(folder.with(name, text));
  }
  [[nodiscard]] Ran run(const Words& folders, const Words& more = {}) const {
    Words words{"batch", "--procedure", procedure, "--json", "-"};
    for (const std::string& one : folders) words.push_back(folder.file(one));
    words.insert(words.end(), more.begin(), more.end());
    return run_soakwright(words);
  }
  /// The logs of the results, without the way to the folder.
  [[nodiscard]] Words logs(const Ran& ran) const {
    Words names;
    std::istringstream in(ran.out);
    for (std::string line; std::getline(in, line);) {
      const std::string log = Json::parse(line)["log"];
      names.push_back(log.substr(folder.file("").size()));
    }
    return names;
  }
};

}  // namespace

TEST_CASE("logs are known by the ending of their names, in any case; all else is counted and said") {
  const Shelf shelf;
  for (const char* name :
       {"a/1.csv", "a/2.TXT", "a/3.tsv", "a/4.Log", "a/5.dat", "a/6.asc", "a/7.prn", "a/8.tab"})
    shelf.add(name);
  for (const char* name :
       {"a/chart.pdf", "a/x.xlsx", "a/y.xlsx", "a/.hidden.csv", "a/.git/z.csv", "a/noending"})
    shelf.add(name);
  const Ran ran = shelf.run({"a"});
  CHECK(shelf.logs(ran).size() == 8);
  CHECK_THAT(
      ran.err,
      Contains("4 files are no log by the ending of the name (without an ending: 1, .pdf: 1, .xlsx: 2)"));
}

TEST_CASE("two logs of one name in different folders are two results, each its own") {
  const Shelf shelf;
  shelf.add("a/d3.csv", log_of_hold(70));
  shelf.add("b/d3.csv", log_of_hold(50));
  const Ran ran = shelf.run({"a", "b"});
  CHECK(shelf.logs(ran) == Words{"a/d3.csv", "b/d3.csv"});
  std::istringstream in(ran.out);
  std::string first, second;
  std::getline(in, first);
  std::getline(in, second);
  CHECK(Json::parse(first)["verdict"] == "met");
  CHECK(Json::parse(second)["verdict"] == "not met");
}

TEST_CASE("a folder that is named twice, by other names or within another, is read once, and that is said") {
  const Shelf shelf;
  shelf.add("a/in/d3.csv");
  fs::create_directory_symlink("a", shelf.folder.file("link"));
  for (const Words& folders : {Words{"a", "a"}, Words{"a", "./a/"}, Words{"a", "link"}, Words{"a", "a/in"}}) {
    const Ran ran = shelf.run(folders);
    INFO(Catch::rangeToString(folders) << ran.err);
    CHECK(shelf.logs(ran) == Words{"a/in/d3.csv"});
    CHECK_THAT(ran.err, Contains("this folder is named twice, or is in another one that is named"));
  }
  CHECK(shelf.logs(shelf.run({"a/in", "a"})) == Words{"a/in/d3.csv"});
}

TEST_CASE("links that loop end, and links to other folders are followed once") {
  const Shelf shelf;
  shelf.add("a/d3.csv");
  shelf.add("far/d4.csv");
  fs::create_directory_symlink("..", shelf.folder.file("far/up"));
  fs::create_directory_symlink(".", shelf.folder.file("a/self"));
  fs::create_directory_symlink("../far", shelf.folder.file("a/far"));
  fs::create_directory_symlink("../far", shelf.folder.file("a/far-again"));
  const Ran ran = shelf.run({"a"});
  INFO(ran.err);
  CHECK(shelf.logs(ran) == Words{"a/d3.csv", "a/far/d4.csv"});
  CHECK_THAT(ran.err, Contains("a/self: this link leads to a folder that is read already") &&
                          Contains("a/far-again: this link leads to a folder that is read already"));
}

TEST_CASE("a link that leads nowhere is an error: a folder of logs may be behind it") {
  const Shelf shelf;
  shelf.add("a/d3.csv");
  fs::create_symlink("gone", shelf.folder.file("a/older"));
  fs::create_symlink("gone.csv", shelf.folder.file("a/newest.csv"));
  const Ran ran = shelf.run({"a"});
  CHECK(ran.exit_code == 66);
  CHECK(shelf.logs(ran) == Words{"a/d3.csv", "a/newest.csv", "a/older"});
  CHECK_THAT(ran.err, Contains("this link leads nowhere"));
}

TEST_CASE("a folder that may not be read is an error, and the others are evaluated") {
  const Shelf shelf;
  shelf.add("a/d3.csv");
  shelf.add("a/locked/d4.csv");
  fs::permissions(shelf.folder.file("a/locked"), fs::perms::none);
  Ran ran;
  if (geteuid() == 0) {
    // Root may read all: as another user, where that one may run the program.
    fs::permissions(shelf.folder.file(""), static_cast<fs::perms>(0755));
    const Words as_nobody{"/usr/bin/setpriv", "--reuid=65534", "--regid=65534", "--clear-groups",
                          SOAKWRIGHT_PROGRAM};
    Words version = as_nobody;
    version.emplace_back("--version");
    if (!fs::exists(as_nobody.front()) || run_words(version).exit_code != 0) {
      WARN("another user cannot run the program here");
      fs::permissions(shelf.folder.file("a/locked"), fs::perms::owner_all);
      return;
    }
    Words words = as_nobody;
    words.insert(words.end(),
                 {"batch", shelf.folder.file("a"), "--procedure", shelf.procedure, "--json", "-"});
    ran = run_words(words);
  } else {
    ran = shelf.run({"a"});
  }
  fs::permissions(shelf.folder.file("a/locked"), fs::perms::owner_all);
  INFO(ran.out << ran.err);
  CHECK(ran.exit_code == 66);
  CHECK(shelf.logs(ran) == Words{"a/d3.csv", "a/locked"});
  CHECK_THAT(ran.err, Contains("a/locked: the folder cannot be read: "));
}

TEST_CASE("names with odd bytes, ends of lines and quotes stay apart and are shown safely") {
  const Shelf shelf;
  for (const char* name : {"a/d\xE9.csv", "a/d\xE8.csv", "a/d\\xE8.csv", "a/li\nne.csv", "a/\x1b[2J.csv",
                           "a/-x.csv", "a/say \"x\",y.csv", "a/=1+1.csv", "a/ space .csv"})
    shelf.add(name);
  const Ran ran = shelf.run({"a"}, {"--workers", "2"});
  INFO(ran.out.substr(0, 500) << ran.err);
  CHECK(ran.exit_code == 0);
  Words logs = shelf.logs(ran);
  CHECK(logs.size() == 9);
  std::sort(logs.begin(), logs.end());
  CHECK(std::adjacent_find(logs.begin(), logs.end()) == logs.end());
  CHECK(std::find(logs.begin(), logs.end(), "a/d\\xE9.csv") != logs.end());
  CHECK(ran.out.find('\x1b') == std::string::npos);
  CHECK(ran.err.find('\x1b') == std::string::npos);
}

TEST_CASE("a pipe and a folder with the name of a log do not hold the batch up") {
  const Shelf shelf;
  shelf.add("a/d3.csv");
  fs::create_directory(shelf.folder.file("a/folder.csv"));
  REQUIRE(mkfifo(shelf.folder.file("a/pipe.csv").c_str(), 0600) == 0);
  const Ran ran = shelf.run({"a"});
  CHECK(ran.exit_code == 66);
  CHECK(shelf.logs(ran) == Words{"a/d3.csv", "a/pipe.csv"});
}

TEST_CASE("outputs in the folder are no logs, neither of this batch nor of an earlier one") {
  const Shelf shelf;
  shelf.add("a/d3.csv");
  const auto run = [&](const char* csv) {
    return run_soakwright({"batch", shelf.folder.file("a"), "--procedure", shelf.procedure, "--csv",
                           shelf.folder.file(csv), "--json", shelf.folder.file("a/r.txt")});
  };
  CHECK(run("a/r.csv").exit_code == 0);
  const std::string table = text_of(shelf.folder.file("a/r.csv"));
  const Ran again = run("a/r.csv");
  CHECK(again.exit_code == 0);
  CHECK(text_of(shelf.folder.file("a/r.csv")) == table);
  CHECK_THAT(again.err, Contains("a/r.csv: this is a result of a batch and not a log"));
  CHECK(run("a/other.csv").exit_code == 0);
  CHECK(text_of(shelf.folder.file("a/other.csv")) == table);
}

TEST_CASE("folders without any log are an error") {
  const Shelf shelf;
  fs::create_directory(shelf.folder.file("empty"));
  const Ran ran = shelf.run({"empty"});
  CHECK(ran.exit_code == 65);
  CHECK_THAT(ran.err, Contains("empty: there is no log here; "));
}
