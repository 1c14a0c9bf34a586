// SPDX-License-Identifier: GPL-3.0-or-later
// The previous records that a job names, and the cycle of each.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/procedure/job/parsed_job.h"

using namespace soakwright;
using namespace soakwright::given_job;

TEST_CASE("previous records are counted back from the job's own cycle") {
  const Job found =
      job("[[previous_record]]\nlog = \"day-1.csv\"\njob = \"day-1.toml\"\n[[previous_record]]\nlog = "
          "\"day-2.csv\"\n");
  REQUIRE(found.previous_records.size() == 2);
  CHECK(found.previous_records[0].log == "day-1.csv");
  CHECK(found.previous_records[0].job == "day-1.toml");
  CHECK(cycle_of(found) == 3);
  CHECK(cycle_of_previous(found, 0) == 1);
  CHECK(cycle_of_previous(found, 1) == 2);
  const Job counted = job(
      "cycle = 5\n[[previous_record]]\nlog = \"a.csv\"\ncycle = 2\n[[previous_record]]\nlog = \"b.csv\"\n");
  CHECK(cycle_of(counted) == 5);
  CHECK(cycle_of_previous(counted, 0) == 2);
  CHECK(cycle_of_previous(counted, 1) == 4);
}

TEST_CASE("a previous record of the job's own cycle is an earlier part of it") {
  const Job found = job("cycle = 1\n[[previous_record]]\nlog = \"morning.csv\"\ncycle = 1\n");
  CHECK(cycle_of(found) == 1);
  CHECK(cycle_of_previous(found, 0) == 1);
}

TEST_CASE("previous records that are refused") {
  const std::string one = "[[previous_record]]\nlog = \"a.csv\"\n";
  for (const Refused& row : std::vector<Refused>{
           Refused{kHead + "[[previous_record]]\ncycle = 1\n", 2, "`log` is missing in [[previous_record]]",
                   "add"},
           Refused{kHead + "cycle = 1\n" + one, 3, "this would be cycle 0", "that cycle's number"},
           Refused{kHead + one + "cycle = 3\n", 4, "cycle 3 comes after cycle 2", "in the order"},
           Refused{
               kHead + "cycle = 3\n" + one + "cycle = 2\n[[previous_record]]\nlog = \"b.csv\"\ncycle = 1\n",
               5, "cycle 2 comes after cycle 1", "in the order"},
           Refused{kHead + one + one, 5, "`log` \"a.csv\" is given in the [[previous_record]] at line 2 too",
                   "once"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}
