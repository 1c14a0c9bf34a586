// SPDX-License-Identifier: GPL-3.0-or-later
// Stages of a procedure that are refused, and in which words.
#include <string>

#include <catch2/catch.hpp>

#include "tests/core/procedure/parsed_procedure.h"

using namespace soakwright;
using namespace soakwright::given_procedure;

TEST_CASE("heat and cool stages that are refused") {
  const auto ramp = [](const std::string& lines, const char* kind = "heat") {
    return kHead + "[[stage]]\nkind = \"" + kind + "\"\n" + lines + "\n";
  };
  for (const Refused& row : {
           Refused{ramp(""), 4, "this heat stage sets no limit", "rate_max, rate_min, spread_max"},
           Refused{ramp("above = 300", "cool"), 4, "this cool stage sets no limit",
                   "rate_max, rate_min, spread_max"},
           Refused{ramp("above = 600\nbelow = 300\nrate_max = 100"), 7,
                   "`above` 600 of this heat stage is not below `below` 300", "changed places"},
           Refused{ramp("above = 300\nbelow = 300\nrate_max = 100"), 7, "not below", "changed places"},
           Refused{ramp("rate_max = 0"), 6, "`rate_max` is 0", "more than 0"},
           Refused{ramp("rate_max = -100"), 6, "`rate_max` is -100", "more than 0"},
           Refused{ramp("rate_max = \"100\""), 6, "`rate_max` is \"100\"", "plain number"},
           Refused{ramp("rate_max = nan"), 6, "`rate_max` is not a finite number", "plain number"},
           Refused{ramp("rate_min = 50\nrate_max = 20"), 7,
                   "`rate_min` 50 of this heat stage is not at most `rate_max` 20", "changed places"},
           Refused{ramp("rate_min = { over = 1, per = \"mm\" }"), 6, "`rate_min` is a table", "plain number"},
           Refused{ramp("rate_max = { per = \"mm\" }"), 6, "`over` is missing in `rate_max`", "add `over"},
           Refused{ramp("rate_max = { over = 5500 }"), 6, "`per` is missing in `rate_max`", "add `per"},
           Refused{ramp("rate_max = { over = 5500, per = \"cm\" }"), 6, "`per` is \"cm\"", ""},
           Refused{ramp("rate_max = { over = 0, per = \"mm\" }"), 6, "`over` is 0", "more than 0"},
           Refused{ramp("rate_max = { over = inf, per = \"mm\" }"), 6, "`over` is not a finite number", ""},
           Refused{ramp("rate_max = { over = 5500, per = \"mm\", at_least = 220, at_most = 55 }"), 6,
                   "`at_least` 220 of `rate_max` is not at most `at_most` 55", "changed places"},
           Refused{ramp("rate_max = { over = 5500, per = \"mm\", at_leest = 55 }"), 6,
                   "`at_leest` is not a key of `rate_max`", "did you mean `at_least`?"},
           Refused{ramp("spread_max = -1"), 6, "`spread_max` is -1", "0 or more"},
           Refused{ramp("rate_max = 100\nspread_within = \"4.6 m\""), 7,
                   "`spread_within` limits nothing without `spread_max`", "give `spread_max`"},
           Refused{ramp("spread_max = 150\nspread_within = 4.6"), 7, "`spread_within` is 4.6", "\"15 ft\""},
           Refused{ramp("spread_max = 150\nspread_within = \"-1 m\""), 7, "`spread_within` is \"-1 m\"",
                   "0 or more"},
           Refused{ramp("rate_max = 100\nlow = 590"), 7, "`low` is not a key of this heat stage", ""},
           Refused{ramp("rate_max = 100\nmax_rate = 3"), 7, "`max_rate` is not a key of this heat stage",
                   "rate_max"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("hold stages that are refused") {
  const auto held = [](const std::string& lines) {
    return kHead + "[[stage]]\nkind = \"hold\"\n" + lines + "\n";
  };
  const auto timed = [&](const std::string& rule) { return held("low = 590\ntime_min = " + rule); };
  for (const Refused& row : {
           Refused{held("low = 590"), 4, "this hold stage sets no limit", "high, time_min, time_max"},
           Refused{held("time_min = \"95 min\""), 4, "`low` is missing in this hold stage", "add `low"},
           Refused{held("low = 620\nhigh = 590\ntime_min = \"1 h\""), 7,
                   "`low` 620 of this hold stage is not below `high` 590", "changed places"},
           Refused{held("low = 590\nhigh = 590\ntime_min = \"1 h\""), 7, "not below", "changed places"},
           Refused{held("high = 590\nlow = 620\ntime_min = \"1 h\""), 7, "not below", "changed places"},
           Refused{held("low = -inf\ntime_min = \"1 h\""), 6, "`low` is not a finite number", "plain number"},
           Refused{held("low = [590]\ntime_min = \"1 h\""), 6, "`low` is a list", "plain number"},
           Refused{timed("95"), 7, "`time_min` is 95", "\"95 min\""},
           Refused{timed("\"95 minutes\""), 7, "\"95 minutes\"", "\"1 h 35 min\""},
           Refused{timed("\"35 min 1 h\""), 7, "\"35 min 1 h\"", "\"1 h 35 min\""},
           Refused{timed("\"-1 h\""), 7, "\"-1 h\"", "0 or more"},
           Refused{timed("01:35:00"), 7, "a time of day", "\"1 h 35 min\""},
           Refused{timed("\"3 h\"\ntime_max = \"2 h\""), 8,
                   "`time_min` \"3 h\" of this hold stage is not at most `time_max` \"2 h\"",
                   "changed places"},
           Refused{timed("{ points = [] }"), 7, "`points` is an empty list", "[["},
           Refused{timed("{ beyond = \"15 min per 25 mm\" }"), 7, "`points` is missing in `time_min`",
                   "add `points"},
           Refused{timed("{ points = [[\"6 mm\"]] }"), 7, "`points[1]` is a list", "\"15 min\"]"},
           Refused{timed("{ points = [\"6 mm\", \"15 min\"] }"), 7, "`points[1]` is \"6 mm\"", "\"15 min\"]"},
           Refused{timed("{ points = [[\"thin\", \"6 min\"]] }"), 7, "`points[1]` is \"thin\"", "\"38 mm\""},
           Refused{timed("{ points = [[\"50 mm\", \"2 h\"], [\"6 mm\", \"15 min\"]] }"), 7,
                   "`points[2]` is not thicker than the point before it", "rising thickness"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"], [\"6 mm\", \"3 h\"]] }"), 7,
                   "`points[2]` is not thicker", "rising thickness"},
           Refused{timed("{ points = [[\"0 mm\", \"2 h\"]] }"), 7, "\"0 mm\"", "more than 0"},
           Refused{timed("{ points = [[\"6 mm\", \"-2 h\"]] }"), 7, "\"-2 h\"", "0 or more"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], beyond = \"15 min\" }"), 7,
                   "`beyond` is \"15 min\"", "\"15 min per 25 mm\""},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], beyond = \"15 min per 0 mm\" }"), 7, "`beyond`",
                   "\"15 min per 25 mm\""},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], beyond = \"-15 min per 25 mm\" }"), 7, "`beyond`",
                   "0 or more"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], step = \"0 in\" }"), 7, "`step` is \"0 in\"",
                   "more than 0"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], steps = \"5 mm\" }"), 7,
                   "`steps` is not a key of `time_min`", "did you mean `step`?"},
           Refused{held("low = 590\ntime_max = { points = [[\"6 mm\", \"2 h\"]] }"), 7,
                   "`time_max` is a table", "duration"},
           Refused{timed("\"1 h\"\ncount = \"total\""), 8, "`count` is \"total\"", "continuous, accumulated"},
           Refused{held("low = 590\nexcursion_time_max = \"-1 s\""), 7, "`excursion_time_max`", "0 or more"},
           Refused{held("low = 590\nspread_max = -30"), 7, "`spread_max` is -30", "0 or more"},
           Refused{held("low = 590\nedge_fraction_min = 50"), 7, "`edge_fraction_min` is above 1",
                   "half is 0.5"},
           Refused{held("low = 590\nedge_fraction_min = 0"), 7, "`edge_fraction_min` is 0", "more than 0"},
           Refused{held("low = -10\nedge_fraction_min = 0.5"), 7, "a `low` that is not above 0",
                   "leave it out"},
           Refused{held("low = 590\ntempering_min = 17900"), 7, "`tempering_min` is 17900",
                   "divided by 1000"},
           Refused{held("low = 590\ntempering_min = 20\ntempering_max = 18"), 8, "`tempering_min` 20",
                   "changed places"},
           Refused{timed("\"1 h\"\nrate_max = 100"), 8, "`rate_max` is not a key of this hold stage", ""},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("maintain stages and kinds that are refused") {
  const auto stage = [](const std::string& lines) { return kHead + "[[stage]]\n" + lines + "\n"; };
  for (const Refused& row : {
           Refused{stage("kind = \"maintain\"\nlow = 120"), 4, "`during` is missing in this maintain stage",
                   "add `during"},
           Refused{stage("kind = \"maintain\"\nduring = \"welding\""), 4,
                   "`low` is missing in this maintain stage", "add `low"},
           Refused{stage("kind = \"maintain\"\nlow = 120\nduring = \"\""), 7, "`during` is empty", "name"},
           Refused{stage("kind = \"maintain\"\nlow = 250\nhigh = 120\nduring = \"welding\""), 7, "not below",
                   "changed places"},
           Refused{stage("low = 120"), 4, "`kind` is missing in this stage", "add `kind"},
           Refused{stage("kind = \"holds\"\nlow = 120\nanything = 1"), 5, "`kind` is \"holds\"",
                   "did you mean `hold`?"},
           Refused{stage("kind = \"soak\""), 5, "`kind` is \"soak\"", "heat, hold, cool, maintain"},
           Refused{stage("kind = 3"), 5, "`kind` is 3", "heat, hold, cool, maintain"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}
