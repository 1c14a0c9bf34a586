// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/hold_time.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/found_holds.h"

using namespace soakwright;

namespace {

std::vector<TimeAbove> above_500(const Traced& made, Span time) {
  return times_at_or_above(made.set, made.group, same_range(made.group, {500, 600}), time, made.time());
}

std::string told(const HoldTime& time) {
  return say(time.certain_s) + " certain, " + say(time.possible_s) + " possible";
}

const char* const kAccumulated = "count = \"accumulated\"";

}  // namespace

// ---- certain ----

TEST_CASE("Continuous hold time is the core, accumulated all in_range of the hold") {
  // 9 K/min up to 560 and down again: 500 is crossed at 53 min 20 s and at 126 min 40 s. A dip of 20 K
  // between 80 and 88 min is below 500 from 83 to 85 min. Accumulated: 4,400 − 120 s.
  const Knots dip = {{0, 20}, {60, 560}, {80, 560}, {84, 480}, {88, 560}, {120, 560}, {180, 20}};
  const MadeRecord made = MadeRecord::every(60, 181).course("TC1", dip);
  CHECK(told(FoundHolds(made, hold_500_600()).held(0)) == "2500 certain, 2500 possible");
  CHECK(told(FoundHolds(made, hold_500_600(kAccumulated)).held(0)) == "4280 certain, 4280 possible");
  const std::string excursion_allowed =
      "[evaluation]\nexcursion_allowed = { time = \"2 min\", depth = 20 }\n";
  CHECK(told(FoundHolds(made, excursion_allowed + hold_500_600()).held(0)) == "4400 certain, 4400 possible");
  CHECK(told(FoundHolds(made, excursion_allowed + hold_500_600(kAccumulated)).held(0)) ==
        "4400 certain, 4400 possible");
}

TEST_CASE("Accumulated time counts the in_range that were disregarded, too") {
  const MadeRecord made = in_and_out(300, {{105, 155}, {205, 1205}, {1305, 1355}});
  CHECK(told(FoundHolds(made, hold_500_600()).held(0)) == "1000 certain, 1000 possible");
  CHECK(told(FoundHolds(made, hold_500_600(kAccumulated)).held(0)) == "1100 certain, 1100 possible");
}

// ---- possible ----

TEST_CASE("Unknown time around the core is possible time of a continuous hold") {
  struct Case {
    const char* what;
    std::vector<Span> in;
    Span missing;  // empty cells, rows of 10 s; lines of 10 s only
    const char* expected;
  };
  const std::vector<Case> cases = {
      // Empty at 500…590 s: no line from 490 to 600 s. Core 600…1105, possible all of 105…1105.
      {"a hole in the hold", {{105, 1105}}, {500, 590}, "505 certain, 1000 possible"},
      // Empty at 100…190 s: no line from 90 s (out, 440) to 200 s. Possible from 90 s on.
      {"a hole across the way in", {{105, 1105}}, {100, 190}, "905 certain, 1015 possible"},
      // The hole lies outside: nothing changes.
      {"a hole before", {{105, 1105}}, {20, 60}, "1000 certain, 1000 possible"},
      // An excursion 605…625 is known, then a hole 650…710: both in_range around the hole are possible with
      // it.
      {"a hole beyond an excursion", {{105, 605}, {625, 1105}}, {660, 700}, "500 certain, 500 possible"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const FoundHolds found(in_and_out(200, c.in).missing("TC1", c.missing.first, c.missing.second),
                           "[evaluation]\ninterpolate_max = \"10 s\"\n" + hold_500_600());
    CHECK(told(found.held(0)) == c.expected);
  }
}

TEST_CASE("Possible accumulated time is every time around a time_range of the hold") {
  // In 105…605 and 805…1305 with a hole 190…310 in the first: certain 85 + 295 + 500, possible 500 + 500.
  const FoundHolds found(in_and_out(200, {{105, 605}, {805, 1305}}).missing("TC1", 200, 300),
                         "[evaluation]\ninterpolate_max = \"10 s\"\n" + hold_500_600(kAccumulated));
  CHECK(told(found.held(0)) == "880 certain, 1000 possible");
}

TEST_CASE("A lone reading out of the range in a hole ends the possible time") {
  // In 105…1105 but for a hole from 400 to 800 s in which 600 s alone reads 440: the core is 400 → 105…400 or
  // 800…1105, the latter longer (305 s); possible from 600 s on: 505 s.
  std::vector<double> values = stepping(200, {{105, 1105}});
  for (std::size_t row = 41; row < 80; ++row) values[row] = kNoReading;
  const std::string specified = "[evaluation]\ninterpolate_max = \"10 s\"\n" + hold_500_600();
  values[60] = 560;
  CHECK(told(FoundHolds(MadeRecord::every(10, 200).column("TC1", values), specified).held(0)) ==
        "305 certain, 1000 possible");
  values[60] = 440;
  CHECK(told(FoundHolds(MadeRecord::every(10, 200).column("TC1", values), specified).held(0)) ==
        "305 certain, 505 possible");
}

TEST_CASE("A record that starts or ends in the hold leaves its possible time open") {
  const std::string specified = "[evaluation]\ninterpolate_max = \"10 s\"\n" + hold_500_600();
  // 101 rows: the record ends at 1,000 s.
  CHECK(told(FoundHolds(in_and_out(101, {{105, 1005}}), specified).held(0)) == "895 certain, none possible");
  CHECK(told(FoundHolds(in_and_out(101, {{-5, 905}}), specified).held(0)) == "905 certain, none possible");
  // It ends in unknown time that the core leads into.
  CHECK(told(FoundHolds(in_and_out(101, {{105, 905}}).missing("TC1", 800, 1000), specified).held(0)) ==
        "685 certain, none possible");
  // The core is over before the record ends: the open end belongs to another time_range.
  CHECK(told(FoundHolds(in_and_out(101, {{105, 805}, {905, 1005}}), specified).held(0)) ==
        "700 certain, 700 possible");
  // … which counts where time is accumulated.
  CHECK(told(FoundHolds(in_and_out(101, {{105, 805}, {905, 1005}}),
                        "[evaluation]\ninterpolate_max = \"10 s\"\n" + hold_500_600(kAccumulated))
                 .held(0)) == "795 certain, none possible");
  // It ends out of the range: nothing is open.
  CHECK(told(FoundHolds(in_and_out(101, {{105, 905}}), specified).held(0)) == "800 certain, 800 possible");
}

TEST_CASE("A hold without a continuous hold holds nothing for certain and the unknown time possibly") {
  // Never above 440; holes from 90 to 200 s and from 290 to 500 s.
  const MadeRecord made = in_and_out(101, {}).missing("TC1", 100, 190).missing("TC1", 300, 490);
  const std::string lines = "[evaluation]\ninterpolate_max = \"10 s\"\n";
  CHECK(told(FoundHolds(made, lines + hold_500_600()).held(0)) == "0 certain, 210 possible");
  CHECK(told(FoundHolds(made, lines + hold_500_600(kAccumulated)).held(0)) == "0 certain, 320 possible");
  CHECK(told(FoundHolds(in_and_out(101, {}), hold_500_600()).held(0)) == "0 certain, 0 possible");
}

TEST_CASE(
    "A hold without a continuous hold looks only between its neighbours' continuous_holds, and within the "
    "record") {
  // TemperatureRange 100…200, then 500…600 never met, though unknown from 300 s to the record's end at 1,000
  // s.
  std::vector<double> values(101, 150);
  const MadeRecord made = MadeRecord::every(10, 101).column("TC1", values).missing("TC1", 310, 1000);
  const FoundHolds found(
      made, "[[stage]]\nkind = \"hold\"\nlow = 100\nhigh = 200\ntime_min = \"1 min\"\n" + hold_500_600());
  CHECK(told(found.held(0)) == "300 certain, none possible");
  CHECK(told(found.held(1)) == "0 certain, 700 possible");
}

// ---- what adds up ----

TEST_CASE("Time out and unknown time within a hold add up") {
  const FoundHolds found(in_and_out(200, {{105, 605}, {645, 1105}, {1165, 1505}}).missing("TC1", 310, 390),
                         "[evaluation]\ninterpolate_max = \"10 s\"\n" + hold_500_600());
  const TimeOut total = time_out(found.holds[0].range, *found.holds[0].period);
  CHECK(total.out_s == close_to(40 + 60));
  CHECK(total.unknown_s == close_to(100));  // no line from 300 to 400 s
}

TEST_CASE("Excursions filled by excursion_allowed still count as time out") {
  const FoundHolds found(in_and_out(200, {{105, 605}, {645, 1105}}),
                         "[evaluation]\nexcursion_allowed = \"60 s\"\n" + hold_500_600());
  CHECK(say(found.holds[0].continuous) == "105..1105");
  CHECK(time_out(found.holds[0].range, *found.holds[0].period).out_s == close_to(40));
}

TEST_CASE("The longest time at or above the lower edge is that of one channel, above the range included") {
  // TC1 500…600 in 105…605; TC2 at 650 in 205…805: 600 s. Both from 440 (500 is 2.857 s after a row for TC2:
  // 60/210 of the way).
  const Traced made(MadeRecord::every(10, 101)
                        .column("TC1", stepping(101, {{105, 605}}))
                        .column("TC2", stepping(101, {{205, 805}}, 650)));
  const auto above = above_500(made, made.time());
  CHECK(above[0].known_s == close_to(500));
  CHECK(made.set.traces[above[1].trace].name == "TC2");
  CHECK(above[1].known_s == close_to(590 + 2 * 10.0 * 150 / 210));
  CHECK(above[1].unknown_s == 0);
  CHECK_FALSE(above[1].open);
  // Only within the time asked for.
  CHECK(above_500(made, {300, 400})[1].known_s == close_to(100));
}

TEST_CASE("Unknown time of a channel could all be at or above the lower edge") {
  const Traced made(MadeRecord::every(10, 101)
                        .column("TC1", stepping(101, {{105, 605}}))
                        .column("TC2", stepping(101, {{105, 405}}))
                        .missing("TC2", 610, 990),
                    10);
  const auto above = above_500(made, made.time());
  CHECK(above[0].known_s == close_to(500));
  CHECK(above[1].known_s == close_to(300));
  CHECK(above[1].unknown_s == close_to(400));  // from 600 to 1,000 s
}

TEST_CASE("Time at or above the lower edge is open where the record starts or ends in it") {
  const auto open = [](const MadeRecord& made, Span time) {
    return above_500(Traced(made, 10), time)[0].open;
  };
  CHECK(open(in_and_out(101, {{-5, 605}}), {0, 1000}));
  CHECK(open(in_and_out(101, {{505, 1005}}), {0, 1000}));
  CHECK_FALSE(open(in_and_out(101, {{505, 905}}), {0, 1000}));
  CHECK_FALSE(open(in_and_out(101, {{505, 1005}}), {0, 900}));  // another hold's time is behind it
  CHECK(open(in_and_out(101, {}).missing("TC1", 990, 1000), {0, 1000}));
  CHECK_FALSE(open(in_and_out(101, {}).missing("TC1", 500, 600), {0, 1000}));
  CHECK_FALSE(open(in_and_out(101, {}).missing("TC1", 990, 1000).exclusion("TC1", 985, 1000), {0, 1000}));
  // A reading at the record's end, below the edge, closes it, though the line to it is missing.
  CHECK_FALSE(open(in_and_out(101, {}).missing("TC1", 950, 990), {0, 1000}));
  // Above the range counts as well: a group out of it does not close the end.
  CHECK(open(MadeRecord::every(10, 101).column("TC1", stepping(101, {{505, 1005}}, 700)), {0, 1000}));
}

TEST_CASE("A channel's way into the range and out of it") {
  const Traced made(MadeRecord::every(10, 101).column("TC1", stepping(101, {{105, 205}, {305, 705}})));
  const auto spans = range_spans(made.set.traces[0], 500, 600);
  CHECK(say(in_and_out(spans, {0, 1000}).in_s) == "105");
  CHECK(say(in_and_out(spans, {0, 1000}).out_s) == "705");
  CHECK(say(in_and_out(spans, {150, 500}).in_s) == "150");
  CHECK(say(in_and_out(spans, {150, 500}).out_s) == "500");
  CHECK_FALSE(in_and_out(spans, {800, 1000}).in_s);
}

TEST_CASE("A channel's way into the range again for the next hold is not its way out of the hold before") {
  // Common practice, no source: two holds in one range, TC1 in it before TC2 and out after it; a short visit
  // between them belongs to the nearer hold.
  const FoundHolds found(MadeRecord::every(10, 201)
                             .column("TC1", stepping(201, {{105, 705}, {905, 955}, {1105, 1705}}))
                             .column("TC2", stepping(201, {{205, 605}, {1205, 1605}})),
                         hold_500_600() + hold_500_600());
  REQUIRE(found.holds[0].period);
  REQUIRE(found.holds[1].period);
  const auto spans = range_spans(found.set.traces[0], 500, 600);
  const InAndOut first = in_and_out_of_hold(spans, periods_around(found.holds, 0), found.time());
  CHECK(say(first.in_s) == "105");
  CHECK(say(first.out_s) == "705");
  const InAndOut second = in_and_out_of_hold(spans, periods_around(found.holds, 1), found.time());
  CHECK(say(second.in_s) == "905");  // 250 s before the second hold, 300 s after the first
  CHECK(say(second.out_s) == "1705");
}

TEST_CASE("A channel that is in range from one hold to the next is in range at both") {
  const FoundHolds found(MadeRecord::every(10, 201)
                             .column("TC1", stepping(201, {{105, 1705}}))
                             .column("TC2", stepping(201, {{205, 605}, {1205, 1605}})),
                         hold_500_600() + hold_500_600());
  const auto spans = range_spans(found.set.traces[0], 500, 600);
  const InAndOut first = in_and_out_of_hold(spans, periods_around(found.holds, 0), found.time());
  CHECK(say(first.in_s) == "105");
  CHECK(say(first.out_s) == "1205");
  const InAndOut second = in_and_out_of_hold(spans, periods_around(found.holds, 1), found.time());
  CHECK(say(second.in_s) == "605");
  CHECK(say(second.out_s) == "1705");
}
