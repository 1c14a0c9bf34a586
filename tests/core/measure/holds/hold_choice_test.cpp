// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/hold_choice.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/found_holds.h"

using namespace soakwright;

namespace {

std::string continuous_holds(const FoundHolds& found) {
  std::string text;
  for (const HoldCourse& hold : found.holds) {
    if (!text.empty()) text += ", ";
    text += say(hold.continuous);
  }
  return text;
}

/// "span | in_range | disregarded"
std::string course(const HoldCourse& hold) {
  return say(hold.period) + " | " + say(hold.in_range) + " | " + say(hold.edge_crossings);
}

std::string hold_at(double low, double high) {
  return "[[stage]]\nkind = \"hold\"\nlow = " + say(low) + "\nhigh = " + say(high) +
         "\ntime_min = \"1 min\"\n";
}

std::string heat_above(double above) {
  return "[[stage]]\nkind = \"heat\"\nabove = " + say(above) + "\nrate_max = 600\n";
}
std::string cool_above(double above) {
  return "[[stage]]\nkind = \"cool\"\nabove = " + say(above) + "\nrate_max = 600\n";
}

}  // namespace

// ---- one hold ----

TEST_CASE("The core of a hold is its longest time_range, the first of equals") {
  CHECK(continuous_holds(FoundHolds(in_and_out(300, {{105, 505}, {605, 1205}, {1305, 1805}}),
                                    hold_500_600())) == "605..1205");
  CHECK(continuous_holds(FoundHolds(in_and_out(300, {{105, 605}, {705, 1205}}), hold_500_600())) ==
        "105..605");
  CHECK(continuous_holds(FoundHolds(in_and_out(300, {}), hold_500_600())) == "none");
}

TEST_CASE("Short in_range at either end are the edge being crossed, and disregarded") {
  struct Case {
    const char* what;
    const char* evaluation;
    std::vector<Span> in;
    const char* expected;
  };
  const std::vector<Case> cases = {
      {"shorter than settle (2 min by default)",
       "",
       {{105, 205}, {305, 1305}},
       "305..1305 | 305..1305 | 105..205"},
      {"as long as settle: it stays", "", {{105, 225}, {305, 1305}}, "105..1305 | 105..225 305..1305 | "},
      {"shorter than a tenth of the core (150 of 2,000 s)",
       "",
       {{105, 255}, {305, 2305}},
       "305..2305 | 305..2305 | 105..255"},
      {"a tenth of it: it stays", "", {{105, 305}, {405, 2405}}, "105..2405 | 105..305 405..2405 | "},
      {"both ends",
       "",
       {{105, 155}, {305, 1305}, {1405, 1455}},
       "305..1305 | 305..1305 | 105..155 1405..1455"},
      {"one after the other",
       "",
       {{105, 155}, {205, 255}, {305, 1305}},
       "305..1305 | 305..1305 | 105..155 205..255"},
      // From the outside in: the 50 s between two that stay are within the hold.
      {"a short one further in stays",
       "",
       {{105, 305}, {405, 455}, {505, 1505}},
       "105..1505 | 105..305 405..455 505..1505 | "},
      {"settle 0: only the tenth counts",
       "[evaluation]\nin_range_min = \"0 s\"\n",
       {{105, 205}, {305, 1305}},
       "105..1305 | 105..205 305..1305 | "},
      {"settle 5 min",
       "[evaluation]\nin_range_min = \"5 min\"\n",
       {{105, 395}, {505, 1305}},
       "505..1305 | 505..1305 | 105..395"},
      // The core itself is never an edge, however short.
      {"a core shorter than settle", "", {{105, 205}}, "105..205 | 105..205 | "},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const FoundHolds found(in_and_out(300, c.in), c.evaluation + hold_500_600());
    CHECK(course(found.holds[0]) == c.expected);
  }
}

// ---- several holds ----

TEST_CASE("Two holds of one range are parted by a cold time, though a hotter hold stands between them") {
  const auto run = [](double between) {
    std::vector<double> values = stepping(200, {{105, 505}, {905, 1505}}, 560, between);
    for (std::size_t row = 61; row <= 80; ++row) values[row] = 710;
    return FoundHolds(
        MadeRecord::every(10, 200).column("TC1", values),
        hold_500_600() + heat_above(300) + hold_at(700, 720) + heat_above(300) + hold_500_600());
  };
  const FoundHolds parted = run(250);
  CHECK(parted.holds[0].continuous);
  CHECK(parted.holds[1].continuous);
  CHECK(parted.holds[2].continuous);
  // Never below 300 in between: the first and the last cannot both be, and the longer one is taken.
  const FoundHolds warm = run(440);
  CHECK_FALSE(warm.holds[0].continuous);
  CHECK(warm.holds[1].continuous);
  CHECK(say(warm.holds[2].continuous) == "905..1505");
}

TEST_CASE("Cores stand in the order of the stages, and the greatest sum of lengths is taken") {
  // TemperatureRanges 100…200 (A) and 500…600 (B). A reading of 150 is in A, 550 in B, 350 in neither: lines
  // of 10 s between them cross 200 at a quarter of the way, 500 at three quarters.
  const std::string specified = hold_at(100, 200) + hold_at(500, 600);
  const auto run = [&](const std::vector<std::pair<double, int>>& rows_at) {
    std::vector<double> values;
    for (const auto& [celsius, rows] : rows_at)
      values.insert(values.end(), static_cast<std::size_t>(rows), celsius);
    return continuous_holds(
        FoundHolds(MadeRecord::every(10, values.size()).column("TC1", values), specified));
  };
  // A from 10·(1 − 0.25) s before its first row … and so on: 11 rows at 150 are 100 s and 2.5 s at each end.
  CHECK(run({{350, 10}, {150, 11}, {350, 10}, {550, 11}, {350, 10}}) == "97.5..202.5, 307.5..412.5");
  // B (1,005 s) stands before A (305 s), and B again (505 s): A and the later B make 810 s, the first B alone
  // 1,005 s: so hold A has no core.
  CHECK(run({{350, 1}, {550, 101}, {350, 1}, {150, 31}, {350, 1}, {550, 51}, {350, 1}}) ==
        "none, 7.5..1012.5");
  // With 605 s in A the two later ones make 1,110 s.
  CHECK(run({{350, 1}, {550, 101}, {350, 1}, {150, 61}, {350, 1}, {550, 51}, {350, 1}}) ==
        "1027.5..1632.5, 1647.5..2152.5");
  // Only A was ever there.
  CHECK(run({{350, 5}, {150, 31}, {350, 5}}) == "47.5..352.5, none");
}

TEST_CASE("Two holds of one range take two in_range in their order") {
  const FoundHolds found(in_and_out(300, {{105, 605}, {705, 1805}}), hold_500_600() + hold_500_600());
  CHECK(continuous_holds(found) == "105..605, 705..1805");
}

TEST_CASE("Of two like holds and one time_range the first has it") {
  const FoundHolds found(in_and_out(300, {{105, 605}}), hold_500_600() + hold_500_600());
  CHECK(continuous_holds(found) == "105..605, none");
}

TEST_CASE("Two continuous_holds in overlapping ranges need the work to cool below `above` between them") {
  struct Case {
    const char* what;
    double lowest;
    std::string between;
    const char* expected;
  };
  const std::vector<Case> cases = {
      {"cooled to 300, heat above 400", 300, heat_above(400), "yes"},
      {"cooled to 440 only", 440, heat_above(400), "no"},
      {"cooled to exactly 400", 400, heat_above(400), "no"},
      {"cooled to 399.9", 399.9, heat_above(400), "yes"},
      {"the highest above counts: cool above 450", 440, heat_above(400) + cool_above(450), "yes"},
      {"a cool stage alone", 440, cool_above(400), "no"},
      {"no stage between", 440, "", "yes"},
      {"a stage without above", 440, "[[stage]]\nkind = \"heat\"\nrate_max = 600\n", "yes"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const MadeRecord made =
        MadeRecord::every(10, 300).column("TC1", stepping(300, {{105, 1105}, {1305, 2005}}, 560, c.lowest));
    const FoundHolds found(made, hold_500_600() + c.between + hold_500_600());
    REQUIRE(found.holds[0].continuous);
    CHECK(found.holds[0].continuous->second < 1200);  // the longer one, in any case
    CHECK((found.holds[1].continuous ? "yes" : "no") == std::string(c.expected));
  }
}

TEST_CASE("TemperatureRanges that do not overlap need no cooling between them") {
  // 150 then 560 with a heat stage above 400 between: nothing ever is below 100.
  std::vector<double> values = stepping(300, {{1005, 2005}}, 560, 150);
  const FoundHolds found(MadeRecord::every(10, 300).column("TC1", values),
                         hold_at(100, 200) + heat_above(120) + hold_500_600());
  CHECK(found.holds[0].continuous);
  CHECK(found.holds[1].continuous);
}

TEST_CASE("The median of the channels then known decides whether the work had cooled") {
  // Between the in_range the channels read these; heat above 400.
  constexpr double none = kNoReading;
  struct Case {
    const char* what;
    std::vector<double> between;
    bool both;
  };
  const std::vector<Case> cases = {
      {"one of three stays hot", {300, 300, 480}, true},
      {"two of three stay hot", {300, 480, 480}, false},
      {"of two the mean: 390", {300, 480}, true},
      {"of two the mean: 400", {300, 500}, false},
      {"one is not known: the mean of the other two is 390", {300, 480, none}, true},
      {"two are not known: the third is cold", {300, none, none}, true},
      {"two are not known: the third is hot", {480, none, none}, false},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    MadeRecord made = MadeRecord::every(10, 300);
    for (std::size_t i = 0; i < c.between.size(); ++i) {
      std::vector<double> values = stepping(300, {{105, 1105}, {1505, 2005}}, 560, 440);
      for (std::size_t row = 120; row < 140; ++row) values[row] = c.between[i];
      made.column("TC" + say(static_cast<double>(i + 1)), values);
    }
    const FoundHolds found(made, "[evaluation]\ninterpolate_max = \"20 s\"\n" + hold_500_600() +
                                     heat_above(400) + hold_500_600());
    CHECK((found.holds[0].continuous.has_value() && found.holds[1].continuous.has_value()) == c.both);
  }
}

TEST_CASE(
    "A time_range between two continuous_holds belongs to the nearer one, to the earlier where both are as "
    "near") {
  // Cores of 1,000 s and 1,100 s, a time_range of 300 s between them.
  struct Case {
    double middle;
    const char* first_span;
    const char* second_span;
  };
  const std::vector<Case> cases = {
      {1105, "5..1405", "1705..2805"},  // 100 s from the first core, 300 s from the second
      {1305, "5..1005", "1305..2805"},  // 300 s and 100 s
      {1205, "5..1505", "1705..2805"},  // 200 s each
  };
  for (const Case& c : cases) {
    CAPTURE(c.middle);
    const FoundHolds found(in_and_out(300, {{5, 1005}, {c.middle, c.middle + 300}, {1705, 2805}}),
                           hold_500_600() + hold_500_600());
    CHECK(continuous_holds(found) == "5..1005, 1705..2805");
    CHECK(say(found.holds[0].period) == c.first_span);
    CHECK(say(found.holds[1].period) == c.second_span);
  }
}

TEST_CASE("A time_range before a neighbour's core or behind it is not this hold's") {
  // TemperatureRanges A 100…200 and B 500…600: B is met for 300 s before A's core and for 1,000 s after it.
  std::vector<double> values;
  for (const auto& [celsius, rows] :
       std::vector<std::pair<double, int>>{{550, 31}, {150, 101}, {550, 101}, {350, 3}})
    values.insert(values.end(), static_cast<std::size_t>(rows), celsius);
  const FoundHolds found(MadeRecord::every(10, values.size()).column("TC1", values),
                         hold_at(100, 200) + hold_at(500, 600));
  // 550 to 150 in 10 s: 500 after 1.25 s, 200 after 8.75 s; back the other way round.
  CHECK(continuous_holds(found) == "308.75..1311.25, 1318.75..2322.5");
  CHECK(say(found.holds[1].period) == "1318.75..2322.5");
}

TEST_CASE("A hold without a core bounds nobody's in_range") {
  const FoundHolds found(in_and_out(300, {{105, 605}, {705, 1805}}), hold_500_600() + hold_at(900, 950));
  CHECK(continuous_holds(found) == "705..1805, none");
  CHECK(say(found.holds[0].period) == "105..1805");
  CHECK_FALSE(found.holds[1].period);
}
