// SPDX-License-Identifier: GPL-3.0-or-later
// Guarded decisions, worked by hand: each channel, pair and window against its limit with its own U.
#include <cmath>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

const std::string kGuarded = "[evaluation]\ndecision_rule = \"guarded\"\n";

std::string tc(const std::string& name, const std::string& keys) {
  return "[[thermocouple]]\ncolumn = \"" + name + "\"\n" + keys + "\n";
}
const std::string kClass1 = "type = \"K\"\ntolerance = \"class 1\"";

/// A level course at these temperatures, TC1, TC2 …, each of them the job's thermocouple of that number.
MadeRecord level(const std::vector<double>& celsius) {
  MadeRecord made = MadeRecord::every(60, 31);
  for (std::size_t i = 0; i < celsius.size(); ++i) {
    const std::string name = "TC" + std::to_string(i + 1);
    made.column(name, std::vector<double>(31, celsius[i])).entry(name, i);
  }
  return made;
}

std::string temperature_max_of_600(double celsius, const std::string& keys) {
  const Evaluated evaluated(
      level({celsius}),
      kGuarded + "[record]\ntemperature_max = 600\n" + hold_500_600_with("time_min = \"1 min\""),
      tc("TC1", keys));
  return evaluated.verdict("record.temperature-max");
}

}  // namespace

// ---- single readings ----

TEST_CASE("A reading is met below the limit by U, not met above it by U, else inconclusive") {
  // Type K, class 1, a = 0.4 % of the reading; last digit 0.1. U(597.2) = 2·√((0.004·597.2)²/3 + 0.1²/12)
  // = 2.7590.
  CHECK(temperature_max_of_600(597.2, kClass1) == "met");           // 599.959
  CHECK(temperature_max_of_600(597.3, kClass1) == "inconclusive");  // 600.059
  CHECK(temperature_max_of_600(602.7, kClass1) == "inconclusive");  // 602.7 − 2.7844 = 599.916
  CHECK(temperature_max_of_600(602.8, kClass1) == "not met");       // 602.8 − 2.7848 = 600.015
  // A fixed ±3 C: U = 2·√(3 + 0.000833) = 3.4646.
  CHECK(temperature_max_of_600(596.5, "tolerance = \"±3 C\"") == "met");
  CHECK(temperature_max_of_600(596.6, "tolerance = \"±3 C\"") == "inconclusive");
  CHECK(temperature_max_of_600(603.4, "tolerance = \"±3 C\"") == "inconclusive");
  CHECK(temperature_max_of_600(603.5, "tolerance = \"±3 C\"") == "not met");
}

TEST_CASE("The verdict is the worst of all channels, and the one shown has the smallest margin after U") {
  const std::string procedure =
      kGuarded + "[record]\ntemperature_max = 600\n" + hold_500_600_with("time_min = \"1 min\"");
  // TC1: 598.0, ±0.5: U = 0.580, margin 1.420. TC2: 596.0, ±6: U = 2·√12.000833 = 6.928, margin −2.928.
  const Evaluated evaluated(level({598.0, 596.0}), procedure,
                            tc("TC1", "tolerance = \"±0.5 C\"") + tc("TC2", "tolerance = \"±6 C\""));
  const Requirement& temperature_max = evaluated["record.temperature-max"];
  CHECK(temperature_max.channel == "TC2");
  CHECK(temperature_max.measured == 596.0);
  CHECK(*temperature_max.uncertainty == close_to(2 * std::sqrt(12 + 0.01 / 12)));
  CHECK(*temperature_max.margin == close_to(600 - 596 - 2 * std::sqrt(12 + 0.01 / 12)));
  CHECK(evaluated.verdict("record.temperature-max") == "inconclusive");
  CHECK(evaluated.verdict("stage-1.over-temperature") == "inconclusive");
  CHECK(evaluated.places("record.temperature-max") == "inconclusive TC2 0..1800");
  CHECK_THAT(evaluated.text("record.temperature-max"), Catch::Contains("U (k = 2): 6.9"));

  // TC1 at 601.0 is not met for certain; TC2 still has the smaller margin.
  const Evaluated worse(level({601.0, 596.0}), procedure,
                        tc("TC1", "tolerance = \"±0.5 C\"") + tc("TC2", "tolerance = \"±6 C\""));
  CHECK(worse.verdict("record.temperature-max") == "not met");
  CHECK(worse["record.temperature-max"].channel == "TC2");
  CHECK(worse.places("record.temperature-max") == "not met TC1 0..1800, inconclusive TC2 0..1800");
}

TEST_CASE("Where the class says nothing the reading is inconclusive, and no U is shown") {
  // Type K, class 1 ends at 1000 °C.
  const std::string procedure =
      kGuarded + "[record]\ntemperature_max = 1200\n[[stage]]\nkind = \"cool\"\nrate_max = 100\n";
  const Evaluated evaluated(level({1010.0}), procedure, tc("TC1", kClass1));
  CHECK(evaluated.told("record.temperature-max") == "1010 inconclusive");
  CHECK_FALSE(evaluated["record.temperature-max"].uncertainty);
  CHECK_FALSE(evaluated["record.temperature-max"].margin);
}

TEST_CASE("First and last row are held with U, too") {
  const std::string limits =
      "[record]\nstart_temperature_max = 300\nend_temperature_max = 300\n[[stage]]\nkind = "
      "\"cool\"\nrate_max = 100\n";
  const MadeRecord made = MadeRecord::every(60, 3).column("TC1", {299.0, 320.0, 303.0}).entry("TC1", 0);
  const Evaluated evaluated(made, kGuarded + limits, tc("TC1", "tolerance = \"±1.5 C\""));
  CHECK(evaluated.told("record.start-temperature") == "299 inconclusive");  // U = 1.733
  CHECK(evaluated.told("record.end-temperature") == "303 not met");
  CHECK(Evaluated(made, limits).told("record.start-temperature") == "299 met");
}

// ---- hold time ----

TEST_CASE("Guarded hold time: certain with the range narrowed by U, possible with it widened") {
  // ±9 C and a last digit of 0.1: U = 2·√(27 + 0.000833) = 10.39246. At 9 K a minute each edge moves by
  // 69.283 s: certain 4,400 − 138.566, possible 4,400 + 138.566.
  const double u = 2 * std::sqrt(27 + 0.01 / 12);
  const double both_edges_s = 2 * u / 9 * 60;
  const auto told = [](const std::string& time_min) {
    return Evaluated(plain_record().entry("TC1", 0),
                     kGuarded + hold_500_600_with("time_min = \"" + time_min + "\""),
                     tc("TC1", "tolerance = \"±9 C\""))
        .verdict("stage-1.hold-time");
  };
  CHECK(told("4261 s") == "met");
  CHECK(told("4262 s") == "inconclusive");
  CHECK(told("4538 s") == "inconclusive");
  CHECK(told("4539 s") == "not met");
  const Evaluated evaluated(plain_record().entry("TC1", 0),
                            kGuarded + hold_500_600_with("time_min = \"70 min\""),
                            tc("TC1", "tolerance = \"±9 C\""));
  const Requirement& time = evaluated["stage-1.hold-time"];
  CHECK(*time.certain_s == close_to(4400 - both_edges_s, 1e-3));
  CHECK(*time.possible_s == close_to(4400 + both_edges_s, 1e-3));
  CHECK(time.measured == time.certain_s);
  CHECK(*time.margin == close_to(4400 - both_edges_s - 4200, 1e-3));
  // The stage is still where the readings put it.
  CHECK(say(evaluated.stage(1).continuous) == "3200..7600");
}

TEST_CASE("Guarded hold time: each channel moves the edges by its own U") {
  // TC2 follows TC1 two minutes behind, in at 3,320 s and out at 7,720 s. TC1 ±9 leaves 69.283 s early, TC2
  // ±0.9 comes in 6.944 s late: U = 2·√(0.27 + 0.000833) = 1.04083.
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {2, 20}, {62, 560}, {122, 560}, {182, 20}}).entry("TC1", 0).entry("TC2", 1);
  const Evaluated evaluated(made, kGuarded + hold_500_600_with("time_min = \"70 min\""),
                            tc("TC1", "tolerance = \"±9 C\"") + tc("TC2", "tolerance = \"±0.9 C\""));
  const double in = 3320 + 2 * std::sqrt(0.27 + 0.01 / 12) / 9 * 60;
  const double out = 7600 - 2 * std::sqrt(27 + 0.01 / 12) / 9 * 60;
  CHECK(*evaluated["stage-1.hold-time"].from_s == close_to(in, 1e-3));
  CHECK(*evaluated["stage-1.hold-time"].to_s == close_to(out, 1e-3));
  CHECK(*evaluated["stage-1.hold-time"].certain_s == close_to(out - in, 1e-3));
}

TEST_CASE("A range narrower than U holds nothing for certain") {
  const Evaluated evaluated(
      level({550.0}).entry("TC1", 0),
      kGuarded + "[[stage]]\nkind = \"hold\"\nlow = 548\nhigh = 552\ntime_min = \"5 min\"\n",
      tc("TC1", "tolerance = \"±3 C\""));  // U = 3.46
  CHECK(evaluated.told("stage-1.hold-time") == "0 inconclusive");
}

TEST_CASE("Longest time and excursions are bounded on both sides by U") {
  const double u = 2 * std::sqrt(27 + 0.01 / 12);
  const double both_edges_s = 2 * u / 9 * 60;
  const auto told = [](const std::string& keys, const std::string& id) {
    return Evaluated(plain_record().entry("TC1", 0), kGuarded + hold_500_600_with(keys),
                     tc("TC1", "tolerance = \"±9 C\""))
        .verdict(id);
  };
  CHECK(told("time_max = \"4539 s\"", "stage-1.hold-time-max") == "met");
  CHECK(told("time_max = \"4538 s\"", "stage-1.hold-time-max") == "inconclusive");
  CHECK(told("time_max = \"4262 s\"", "stage-1.hold-time-max") == "inconclusive");
  CHECK(told("time_max = \"4261 s\"", "stage-1.hold-time-max") == "not met");
  const Evaluated longest(plain_record().entry("TC1", 0),
                          kGuarded + hold_500_600_with("time_max = \"80 min\""),
                          tc("TC1", "tolerance = \"±9 C\""));
  CHECK(*longest["stage-1.hold-time-max"].uncertainty == close_to(both_edges_s, 1e-3));
  CHECK(*longest["stage-1.hold-time-max"].possible_s == close_to(4400 + both_edges_s, 1e-3));

  // Down to 505 and back at 5 K a minute, then level: within U = 10.39 of the edge, never out by the
  // readings.
  const MadeRecord close = MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {91, 505}, {102, 560}, {120, 560}, {180, 20}});
  MadeRecord guarded = close;
  guarded.entry("TC1", 0);
  const std::string no_excursion = hold_500_600_with("excursion_time_max = \"0 s\"");
  CHECK(Evaluated(close, no_excursion).told("stage-1.excursion-time") == "0 met");
  CHECK(Evaluated(guarded, kGuarded + no_excursion, tc("TC1", "tolerance = \"±9 C\""))
            .told("stage-1.excursion-time") == "0 inconclusive");
  CHECK(Evaluated(guarded, kGuarded + no_excursion, tc("TC1", "tolerance = \"±0.9 C\""))
            .told("stage-1.excursion-time") == "0 met");
}

// ---- pairs ----

TEST_CASE("A spread has the U of its pair") {
  // ±3 and ±4: U₁ = 2·√(3 + 0.000833), U₂ = 2·√(16/3 + 0.000833); √(U₁² + U₂²) = 2·√(25/3 + 0.001667)
  // = 5.7741.
  const auto told = [](double second, double limit) {
    return Evaluated(level({580.0, second}),
                     kGuarded + hold_500_600_with("spread_max = " + std::to_string(static_cast<int>(limit))),
                     tc("TC1", "tolerance = \"±3 C\"") + tc("TC2", "tolerance = \"±4 C\""))
        .told("stage-1.spread");
  };
  CHECK(told(555.8, 30) == "24.2 met");           // 29.974
  CHECK(told(555.7, 30) == "24.3 inconclusive");  // 30.074
  CHECK(told(544.3, 30) == "35.7 inconclusive");  // 29.926
  CHECK(told(544.2, 30) == "35.8 not met");       // 30.026
}

TEST_CASE("The pair shown has the smallest margin after U, though another is further apart") {
  // TC1 − TC2 = 20 with ±0.5 each: U = 2·√(0.5/3 + 0.001667) = 0.820. TC1 − TC3 = 18 with ±0.5 and ±6: 6.952.
  const Evaluated evaluated(level({580.0, 560.0, 562.0}), kGuarded + hold_500_600_with("spread_max = 24"),
                            tc("TC1", "tolerance = \"±0.5 C\"") + tc("TC2", "tolerance = \"±0.5 C\"") +
                                tc("TC3", "tolerance = \"±6 C\""));
  const Requirement& spread = evaluated["stage-1.spread"];
  CHECK(spread.channel == "TC1");
  CHECK(spread.channel_2 == "TC3");
  CHECK(spread.measured == 18.0);
  CHECK(*spread.uncertainty == close_to(2 * std::sqrt((0.25 + 36) / 3 + 0.02 / 12)));
  CHECK(evaluated.verdict("stage-1.spread") == "inconclusive");
  // The pair that decides is not the widest: both are said.
  CHECK_THAT(evaluated.text("stage-1.spread"),
             Catch::Contains("nearest to the limit after U") && Catch::Contains("hotter than TC3") &&
                 Catch::Contains("widest as measured") && Catch::Contains("hotter than TC2"));
  CHECK(Evaluated(level({580.0, 560.0, 562.0}), hold_500_600_with("spread_max = 24"))["stage-1.spread"]
            .channel_2 == "TC2");
}

TEST_CASE("Channels that are equally uncertain and read the same still make a pair") {
  const Evaluated evaluated(level({580.0, 580.0}), kGuarded + hold_500_600_with("spread_max = 2"),
                            tc("TC1", "tolerance = \"±3 C\"") + tc("TC2", "tolerance = \"±3 C\""));
  CHECK(evaluated.told("stage-1.spread") == "0 inconclusive");  // U = 2·√(6 + 0.001667) = 4.90
}

// ---- rates ----

TEST_CASE("A guarded rate is met only if slope + 4·SE + U is within the limit") {
  // 9 K a minute = 540 C/h with no noise below the corner at 560: s = 0.1/√12, 15 readings a minute apart, SE
  // = (s/Δt)·√(12/(15·224)) = 0.10351. Class 1: U = 2·(0.004/√3)·540 = 2.49415. Held with 540 ± 2.90819;
  // the overall rate from 100 to 500 (Δt = 2,666.7 s) less U and 4·√2·s/Δt = 0.22046: 537.28539.
  const auto told = [](const std::string& limit, const std::string& keys) {
    return Evaluated(plain_record().entry("TC1", 0),
                     kGuarded + "[[stage]]\nkind = \"heat\"\nabove = 100\nbelow = 550\nrate_max = " + limit +
                         "\n" + hold_500_600_with("time_min = \"1 min\""),
                     tc("TC1", keys))
        .verdict("stage-1.heating-rate");
  };
  CHECK(told("542.91", kClass1) == "met");
  CHECK(told("542.90", kClass1) == "inconclusive");
  CHECK(told("537.29", kClass1) == "inconclusive");
  CHECK(told("537.28", kClass1) == "not met");
  // A constant error cancels: noise alone is left.
  CHECK(told("540.42", "tolerance = \"±9 C\"") == "met");
  CHECK(told("540.41", "tolerance = \"±9 C\"") == "inconclusive");
  const Evaluated evaluated(
      plain_record().entry("TC1", 0),
      kGuarded + "[[stage]]\nkind = \"heat\"\nabove = 100\nbelow = 550\nrate_max = 600\nrate_min = 100\n" +
          hold_500_600_with("time_min = \"1 min\""),
      tc("TC1", kClass1));
  const double u = 2 * 0.004 / std::sqrt(3.0) * 540;
  CHECK(*evaluated["stage-1.heating-rate"].uncertainty == close_to(u));
  CHECK(*evaluated["stage-1.heating-rate"].margin == close_to(600 - 540 - u));
  CHECK(*evaluated["stage-1.heating-rate-min"].uncertainty == close_to(u));
  CHECK(*evaluated["stage-1.heating-rate-min"].margin == close_to(540 - 100 - u));
}

// ---- the rest ----

TEST_CASE("Keep: out for certain by more than U, within it for certain by U, else inconclusive") {
  // Level at 124: ±3 C has U = 3.4646, so 120 is 4 below and 121 only 3.
  const auto told = [](const std::string& low, const std::string& keys) {
    MadeRecord made = level({124.0});
    made.period("welding", 60, 600);
    return Evaluated(made,
                     kGuarded + "[[stage]]\nkind = \"maintain\"\nlow = " + low + "\nduring = \"welding\"\n",
                     tc("TC1", keys))
        .verdict("stage-1.maintain");
  };
  CHECK(told("120", "tolerance = \"±3 C\"") == "met");
  CHECK(told("121", "tolerance = \"±3 C\"") == "inconclusive");
  CHECK(told("127", "tolerance = \"±3 C\"") == "inconclusive");
  CHECK(told("128", "tolerance = \"±3 C\"") == "not met");
}

TEST_CASE("The edge's share and the tempering parameter have their U") {
  MadeRecord made = level({560.0, 255.0});
  made.at_edge("TC2");
  const std::string job =
      tc("TC1", "tolerance = \"±3 C\"") + tc("TC2", "zone = \"edge\"\ntolerance = \"±3 C\"");
  const double u = 2 * std::sqrt(3 + 0.01 / 12);
  const Evaluated evaluated(
      made, kGuarded + hold_500_600_with("edge_fraction_min = 0.5\ntempering_min = 16.0"), job);
  CHECK(evaluated.verdict("stage-1.edge-temperature") == "met");  // (255 − 3.46) / 500 = 0.503
  CHECK(*evaluated["stage-1.edge-temperature"].uncertainty == close_to(u / 500));
  CHECK(Evaluated(made, kGuarded + hold_500_600_with("edge_fraction_min = 0.504"), job)
            .verdict("stage-1.edge-temperature") == "inconclusive");
  // Half an hour at 560: P = 833.15·(20 + log10 0.5)/1000, and at 560 ± U.
  const auto parameter = [](double celsius) { return (celsius + 273.15) * (20 + std::log10(0.5)) / 1000; };
  CHECK(*evaluated["stage-1.tempering-min"].measured == close_to(parameter(560), 1e-6));
  CHECK(*evaluated["stage-1.tempering-min"].uncertainty ==
        close_to(parameter(560) - parameter(560 - u), 1e-6));
  const auto tempered = [&](double least) {
    return Evaluated(made, kGuarded + hold_500_600_with("tempering_min = " + say(least)), job)
        .verdict("stage-1.tempering-min");
  };
  CHECK(tempered(parameter(560 - u) - 0.001) == "met");
  CHECK(tempered(parameter(560 - u) + 0.001) == "inconclusive");
  CHECK(tempered(parameter(560 + u) + 0.001) == "not met");
}

TEST_CASE("Behind a take-over the spare's U counts") {
  // TC1 (±0.5) is lost after 10 min at 590; its spare TC2 (±6) reads 596 from then on.
  MadeRecord made = level({590.0, 596.0});
  made.missing("TC1", 660, 1800).spare("TC2", "TC1");
  const Evaluated evaluated(made, kGuarded + hold_500_600_with("time_min = \"1 min\""),
                            tc("TC1", "tolerance = \"±0.5 C\"") +
                                tc("TC2", "role = \"spare\"\nspare_for = \"TC1\"\ntolerance = \"±6 C\""));
  CHECK(evaluated.told("stage-1.over-temperature") == "596 inconclusive");
  CHECK(*evaluated["stage-1.over-temperature"].uncertainty == close_to(2 * std::sqrt(12 + 0.01 / 12)));
}

TEST_CASE("A guarded result carries each channel's budget at the limits' temperatures") {
  const Evaluated evaluated(level({580.0}), kGuarded + hold_500_600_with("time_min = \"1 min\""),
                            tc("TC1", kClass1 + "\nextension = \"±1.5 C\""));
  REQUIRE(evaluated.all.budgets.size() == 1);
  const ChannelBudget& budget = evaluated.all.budgets[0];
  CHECK(budget.channel == "TC1");
  REQUIRE(budget.points.size() == 2);
  CHECK(budget.points[0].what == "stage-1 low");
  CHECK(budget.points[0].celsius == 500);
  REQUIRE(budget.points[0].lines.size() == 3);
  CHECK(*budget.points[0].lines[0].half_width_k == close_to(2.0));
  CHECK(*budget.points[1].lines[0].half_width_k == close_to(2.4));
  CHECK(*budget.points[1].lines[1].standard_k == close_to(1.5 / std::sqrt(3.0)));
  CHECK(budget.points[1].lines[2].is_step);
  CHECK(*budget.points[1].expanded_k == close_to(2 * std::sqrt(2.4 * 2.4 / 3 + 0.75 + 0.01 / 12)));
  CHECK(Evaluated(level({580.0}), hold_500_600_with("time_min = \"1 min\"")).all.budgets.empty());
}

TEST_CASE("A channel that no job lists, and a class that its type does not have, are told by name") {
  const Procedure specified = procedure_of(kGuarded + hold_500_600_with("time_min = \"1 min\""));
  const auto problems = [&](const Record& record, const std::string& job) {
    const Job done = job_of(job);
    const Problems found = check_record(record, specified, &done);
    return found.empty() ? std::string("none") : found.front().text();
  };
  MadeRecord unlisted = level({580.0});
  unlisted.column("TC2", std::vector<double>(31, 570.0));
  CHECK_THAT(problems(unlisted.record(), tc("TC1", kClass1)),
             Catch::Contains("thermocouple \"TC2\" has neither `type` nor `tolerance`"));
  CHECK_THAT(problems(level({580.0}).record(), tc("TC1", "type = \"B\"\ntolerance = \"class 1\"")),
             Catch::Contains("no class 1 for type B of TC1"));
  CHECK(problems(level({580.0}).record(), tc("TC1", kClass1)) == "none");
}
