// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/known_channels.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

std::string fewest(const Traced& made) {
  const FewestKnown found = fewest_known(made.set, made.group, made.time());
  return std::to_string(found.count) + " in " + say(found.time);
}

MadeRecord three() {
  return MadeRecord::every(60, 11)
      .column("TC1", std::vector<double>(11, 500))
      .column("TC2", std::vector<double>(11, 500))
      .column("TC3", std::vector<double>(11, 500));
}

HoldStage range(double low, double high) {
  HoldStage hold;
  hold.low = Temperature::of_celsius(low);
  hold.high = Temperature::of_celsius(high);
  return hold;
}

}  // namespace

TEST_CASE("The fewest channels known at once, and the first time with so few") {
  CHECK(fewest(Traced(three())) == "3 in 0..600");
  // No line of TC2 from 60 to 180 s, none of TC3 from 120 to 240 s: both unknown from 120 to 180 s.
  CHECK(fewest(Traced(three().missing("TC2", 120, 120).missing("TC3", 180, 180), 60)) == "1 in 120..180");
  // Holes one after the other: two are known in either.
  CHECK(fewest(Traced(three().missing("TC2", 120, 120).missing("TC3", 300, 300), 60)) == "2 in 60..180");
}

TEST_CASE("One excluded does not count") {
  // Excluded from its reading at 60 s to that at 240 s.
  CHECK(fewest(Traced(three().exclusion("TC1", 100, 200))) == "2 in 60..240");
}

TEST_CASE("A channel with its spare counts once") {
  MadeRecord made = three();
  made.spare("TC3", "TC1").missing("TC1", 300, 600);
  CHECK(fewest(Traced(made)) == "2 in 0..600");
}

TEST_CASE("The time runs from the first entry into the first range to the last exit from the last") {
  // 10 K a minute: TC1 from 100, TC2 from 80; TC1 is at 120 after 2 min, TC2 after 4. Back down from 8 min
  // on.
  const Traced made(MadeRecord::every(60, 17)
                        .course("TC1", {{0, 100}, {8, 180}, {16, 100}})
                        .course("TC2", {{0, 80}, {8, 160}, {16, 80}}));
  const auto one =
      first_entry_to_last_exit(made.set, made.group, made.time(), range(120, 200), range(120, 200));
  CHECK(say(one) == "120..840");
  // Into 120…130 by TC1 at 2 min; last out of 150…170 is TC1 at 11 min, TC2 at 9 min.
  const auto two =
      first_entry_to_last_exit(made.set, made.group, made.time(), range(120, 130), range(150, 170));
  CHECK(say(two) == "120..660");
  CHECK_FALSE(first_entry_to_last_exit(made.set, made.group, made.time(), range(120, 130), range(300, 400)));
}
