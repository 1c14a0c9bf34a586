// SPDX-License-Identifier: GPL-3.0-or-later
// No two records of a batch share the file of their report. Common practice, no source.
#include "core/batch/report_names.h"

#include <set>

#include <catch2/catch.hpp>

using namespace soakwright;
using Names = std::vector<std::string>;

TEST_CASE("a report has the path of its log, and the job's name where it is another one") {
  CHECK(report_names({{"a/x.csv", ""}, {"b/x.csv", "b/x.toml"}, {"b/x.txt", "b/guarded.toml"}}) ==
        Names{"a/x.csv.pdf", "b/x.csv.pdf", "b/x.txt.guarded.pdf"});
}

TEST_CASE("a report stays within its folder, wherever the log is") {
  CHECK(report_names({{"../x.csv", ""}, {"/mnt/logs/x.csv", ""}}) ==
        Names{"__/x.csv.pdf", "mnt/logs/x.csv.pdf"});
}

TEST_CASE("names that differ in capitals alone, or come to the same, are told apart") {
  const Names names =
      report_names({{"a/X.csv", ""}, {"a/x.csv", ""}, {"x.csv", "txt.toml"}, {"x.csv.txt", ""}});
  CHECK(std::set<std::string>(names.begin(), names.end()).size() == 4);
  CHECK(names[0].starts_with("a/X.csv-"));
  CHECK(names[1].starts_with("a/x.csv-"));
  CHECK(names[2] != names[3]);
}

TEST_CASE("a name as long as names can be leaves room for the ending") {
  const std::string longest = std::string(251, 'x') + ".csv";
  const std::string other = std::string(250, 'x') + "y.csv";
  const Names names = report_names({{longest, ""}, {other, ""}});
  CHECK(names[0].size() <= 255);
  CHECK(names[0] != names[1]);
}

TEST_CASE("the hash of a name is FNV-1a") {
  // Test vectors of draft-eastlake-fnv, appendix C.
  CHECK(name_hash("") == 0xcbf29ce484222325U);
  CHECK(name_hash("a") == 0xaf63dc4c8601ec8cU);
  CHECK(name_hash("foobar") == 0x85944171f73967e8U);
}
