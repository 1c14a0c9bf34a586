// SPDX-License-Identifier: GPL-3.0-or-later
// Tempering as a requirement of a hold.
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

TEST_CASE("Tempering is held against the coldest and the hottest channel") {
  // One hour at 620 and at 600: P = 17.863 and 17.463.
  const MadeRecord made = MadeRecord::every(60, 61)
                              .column("TC1", std::vector<double>(61, 620))
                              .column("TC2", std::vector<double>(61, 600));
  const std::string low = "[[stage]]\nkind = \"hold\"\nlow = 590\n";
  const auto told = [&](const std::string& keys, const std::string& id, const MadeRecord& record) {
    const Evaluated evaluated(record, low + keys + "\n");
    return evaluated.verdict(id) + " " + evaluated[id].channel.value_or("-");
  };
  CHECK(told("tempering_min = 17.46", "stage-1.tempering-min", made) == "met TC2");
  CHECK(told("tempering_min = 17.47", "stage-1.tempering-min", made) == "not met TC2");
  CHECK(told("tempering_max = 17.87", "stage-1.tempering-max", made) == "met TC1");
  CHECK(told("tempering_max = 17.86", "stage-1.tempering-max", made) == "not met TC1");
  // Unknown time can only add: what is too much stays so, what is too little may not have been.
  MadeRecord hole = made;
  hole.missing("TC2", 1800, 2400);
  CHECK(told("tempering_min = 17.46", "stage-1.tempering-min", hole) == "inconclusive TC2");
  CHECK(told("tempering_max = 17.86", "stage-1.tempering-max", hole) == "not met TC1");
  CHECK(told("tempering_max = 17.87", "stage-1.tempering-max", hole) == "inconclusive TC1");
}

TEST_CASE("Tempering is shown of the whole record, at the last hold's lower edge") {
  const MadeRecord made = MadeRecord::every(60, 61)
                              .column("TC1", std::vector<double>(61, 620))
                              .column("TC2", std::vector<double>(61, 600));
  const Evaluated evaluated(made,
                            "[[stage]]\nkind = \"hold\"\nlow = 300\ntime_min = \"1 min\"\n"
                            "[[stage]]\nkind = \"hold\"\nlow = 590\ntempering_min = 1\n",
                            "weld = \"W-1\"\n");
  REQUIRE(evaluated.all.tempering.size() == 2);
  const ChannelTempering& first = evaluated.all.tempering[0];
  CHECK(first.weld == "W-1");
  CHECK(first.channel == "TC1");
  CHECK(*first.parameter == close_to(17.863, 0.0005));
  CHECK(*first.hours_at_c == close_to(590));
  // Equivalent at `low`: log10 t = (893.15/863.15)·20 − 20.
  CHECK(*first.hours == close_to(std::pow(10.0, 893.15 / 863.15 * 20 - 20), 1e-6));
  CHECK_THAT(evaluated.text("stage-2.tempering-min"), Catch::Contains("whole record"));
}
