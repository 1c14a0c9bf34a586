// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/spread.h"

#include <random>

#include <catch2/catch.hpp>

#include "core/system/parallel_for.h"
#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

Spread spread_of(const Traced& made, const SpecifiedSpread& specified = {}, std::vector<Span> times = {}) {
  if (times.empty()) times = {made.time()};
  return measure_spread(made.record, made.set, made.group, times, specified);
}

/// "30 TC1-TC2 at 60".
std::string told(const Traced& made, const std::optional<MeasuredSpread>& spread) {
  if (!spread) return "none";
  std::string text = say(spread->kelvin);
  text += ' ';
  text += made.set.traces[spread->hottest].name;
  text += '-';
  text += made.set.traces[spread->coldest].name;
  text += " at ";
  text += say(spread->at_s);
  return text;
}
std::string widest(const Traced& made, const SpecifiedSpread& specified = {},
                   const std::vector<Span>& times = {}) {
  return told(made, spread_of(made, specified, times).widest);
}

SpecifiedSpread above(double celsius) { return {celsius, {}, {}}; }
SpecifiedSpread within(double metres) { return {{}, metres, {}}; }
SpecifiedSpread limit(double kelvin) { return {{}, {}, kelvin}; }

/// Three channels at 0, 2 and 4 m along the work.
MadeRecord along_the_work(std::vector<double> tc1, std::vector<double> tc2, std::vector<double> tc3) {
  const std::size_t rows = tc1.size();
  return MadeRecord::every(60, rows)
      .column("TC1", std::move(tc1))
      .column("TC2", std::move(tc2))
      .column("TC3", std::move(tc3))
      .at("TC1", 0)
      .at("TC2", 2)
      .at("TC3", 4);
}

}  // namespace

TEST_CASE("The spread is highest minus lowest of the known channels at a row, the widest row counts") {
  const Traced made(MadeRecord::every(60, 3)
                        .column("TC1", {500, 540, 520})
                        .column("TC2", {510, 510, 510})
                        .column("TC3", {505, 520, 545}));
  CHECK(widest(made) == "35 TC3-TC2 at 120");
  CHECK(widest(made, {}, {{0, 60}}) == "30 TC1-TC2 at 60");
}

TEST_CASE("Ties: the first in time, then the first in the log's order") {
  const Traced made(MadeRecord::every(60, 3)
                        .column("TC1", {500, 530, 500})
                        .column("TC2", {500, 530, 530})
                        .column("TC3", {500, 500, 500}));
  CHECK(widest(made) == "30 TC1-TC3 at 60");
}

TEST_CASE("Readings are subtracted as the decimals that the log printed") {
  struct Case {
    double hot, cold, difference;
  };
  const Case cases[] = {
      {1010.1, 1000.1, 10.0}, {600.3, 590.2, 10.1}, {611.6, 601.5, 10.1}, {1000.1, 989.9, 10.2}};
  CHECK(600.3 - 590.2 < 10.1);  // in doubles, by a little
  CHECK(611.6 - 601.5 > 10.1);
  for (const Case& c : cases) {
    CAPTURE(c.hot, c.cold);
    const Traced made(MadeRecord::every(60, 1).column("TC1", {c.hot}).column("TC2", {c.cold}));
    const Spread spread = spread_of(made, limit(c.difference));
    CHECK(spread.widest->kelvin == c.difference);
    CHECK(spread.places.empty());
  }
}

TEST_CASE("Whole degrees Fahrenheit differ by ninths, to the nearest double") {
  const Traced made(MadeRecord::every(60, 1)
                        .column("TC1", {1118}, 0, TemperatureUnit::fahrenheit)
                        .column("TC2", {1100}, 0, TemperatureUnit::fahrenheit));
  CHECK(spread_of(made).widest->kelvin == 10.0);  // 18 °F
}

TEST_CASE("Rows count while the hottest is at or above the level") {
  const Traced made(
      MadeRecord::every(60, 4).column("TC1", {290, 299.9, 300, 400}).column("TC2", {200, 200, 280, 390}));
  CHECK(widest(made) == "99.9 TC1-TC2 at 60");
  CHECK(widest(made, above(300)) == "20 TC1-TC2 at 120");
  CHECK(widest(made, above(400)) == "10 TC1-TC2 at 180");
  CHECK(widest(made, above(401)) == "none");
}

TEST_CASE("Only rows that belong to the times count, within a thousandth of a second") {
  const Traced made(
      MadeRecord::every(60, 4).column("TC1", {510, 520, 530, 540}).column("TC2", {500, 500, 500, 500}));
  CHECK(widest(made, {}, {{0, 60}}) == "20 TC1-TC2 at 60");
  CHECK(widest(made, {}, {{0, 119.9995}}) == "30 TC1-TC2 at 120");
  CHECK(widest(made, {}, {{0, 119.998}}) == "20 TC1-TC2 at 60");
  CHECK(widest(made, {}, {{0, 10}, {115, 130}}) == "30 TC1-TC2 at 120");
  CHECK(widest(made, {}, {{61, 119}}) == "none");
}

TEST_CASE("A channel joined by a line over an empty cell is known there") {
  const Traced made(
      MadeRecord::every(60, 3).column("TC1", {500, kNoReading, 560}).column("TC2", {500, 490, 560}));
  CHECK(widest(made) == "40 TC1-TC2 at 60");  // 530 − 490
}

TEST_CASE("Fewer than two known channels: not measured there") {
  const MadeRecord two =
      MadeRecord::every(60, 3).column("TC1", {500, 500, 500}).column("TC2", {510, kNoReading, kNoReading});
  CHECK(widest(Traced(two, 60)) == "10 TC2-TC1 at 0");
  CHECK(widest(Traced(two, 60), {}, {{60, 120}}) == "none");
  CHECK(widest(Traced(MadeRecord::every(60, 3).column("TC1", {1, 2, 3}))) == "none");
}

TEST_CASE("A channel excluded does not count, both ends included") {
  const MadeRecord made = MadeRecord::every(60, 5)
                              .column("TC1", {500, 500, 500, 500, 500})
                              .column("TC2", {505, 505, 505, 505, 505})
                              .column("TC3", {501, 590, 595, 590, 501});
  CHECK(widest(Traced(made)) == "95 TC3-TC1 at 120");
  CHECK(widest(Traced(MadeRecord(made).exclusion("TC3", 60, 180))) == "5 TC2-TC1 at 0");
  CHECK(widest(Traced(MadeRecord(made).exclusion("TC3", 61, 180))) == "90 TC3-TC1 at 60");
}

TEST_CASE("After a take-over the spare's readings count, at its instant the main channel's") {
  // TC1 ends at 60 s with 505; the spare is 30 above it.
  const Traced made(MadeRecord::every(60, 4)
                        .column("TC1", {505, 505, kNoReading, kNoReading})
                        .column("TC2", {500, 500, 500, 500})
                        .column("TC9", {535, 535, 535.3, 535})
                        .spare("TC9", "TC1"),
                    60);
  CHECK(widest(made, {}, {{0, 60}}) == "5 TC1-TC2 at 0");
  CHECK(widest(made) == "35.3 TC1-TC2 at 120");
  CHECK(spread_of(made).widest->kelvin == 35.3);
}

TEST_CASE("With a length only channels that close to each other along the work are compared") {
  const Traced made(along_the_work({550}, {560}, {585}));
  CHECK(widest(made) == "35 TC3-TC1 at 0");
  CHECK(widest(made, within(4)) == "35 TC3-TC1 at 0");
  CHECK(widest(made, within(3.9)) == "25 TC3-TC2 at 0");
  CHECK(widest(made, within(2)) == "25 TC3-TC2 at 0");
  CHECK(widest(made, within(1.9)) == "none");
  CHECK(widest(made, within(0)) == "none");
}

TEST_CASE("Lengths as printed decide which channels are close") {
  // 4.6 m apart: 5.8 − 1.2 in doubles is 4.6 only to rounding.
  MadeRecord made = MadeRecord::every(60, 1).column("TC1", {500}).column("TC2", {510});
  const Traced apart(made.at("TC1", 1.2).at("TC2", 5.8));
  CHECK(widest(apart, within(4.6)) == "10 TC2-TC1 at 0");
}

TEST_CASE("The hottest of all decides whether a row counts, also with a length") {
  // TC1 at 300 is far from the others; the pair TC2, TC3 is below 300 and 2 m apart.
  const Traced made(along_the_work({300, 200}, {250, 250}, {280, 290}));
  CHECK(widest(made, {300.0, 2.0, {}}) == "50 TC1-TC2 at 0");
  CHECK(widest(made, {300.1, 2.0, {}}) == "none");
}

TEST_CASE("Rows beyond the limit one after the other are one place") {
  const Traced made(MadeRecord::every(60, 8)
                        .column("TC1", {510, 520, 530, 525, 510, 510, 540, 510})
                        .column("TC2", {500, 500, 500, 500, 500, 500, 500, 500}));
  const Spread spread = spread_of(made, limit(15));
  REQUIRE(spread.places.size() == 2);
  CHECK(say(spread.places[0].time) == "60..180");
  CHECK(told(made, spread.places[0].widest) == "30 TC1-TC2 at 120");
  CHECK(say(spread.places[1].time) == "360..360");
  CHECK(told(made, spread.widest) == "40 TC1-TC2 at 360");
  CHECK(spread_of(made, limit(40)).places.empty());
  CHECK(spread_of(made, limit(39.9)).places.size() == 1);
}

TEST_CASE("Long records are walked in tiles without losing a row") {
  // 1,500 rows; the widest row at every place in turn.
  for (std::size_t place = 0; place < 1500; place += 73) {
    std::vector<double> hot(1500, 510);
    hot[place] = 600;
    const Traced made(
        MadeRecord::every(10, 1500).column("TC1", hot).column("TC2", std::vector<double>(1500, 500)));
    CAPTURE(place);
    CHECK(widest(made) == "100 TC1-TC2 at " + say(10.0 * static_cast<double>(place)));
  }
}

namespace {

/// Four channels that wander about each other, with readings missing one by one, and times in which some or
/// all are silent.
MadeRecord wandering(std::uint32_t seed) {
  constexpr std::size_t kRows = 30'000;
  std::mt19937 chance(seed);
  std::uniform_real_distribution<double> step(-0.5, 0.5);
  std::uniform_int_distribution<int> one_of(0, 2999);
  MadeRecord made = MadeRecord::every(5, kRows);
  for (const char* name : {"TC1", "TC2", "TC3", "TC4"}) {
    std::vector<double> celsius;
    double now = 600.0;
    std::size_t silent_until = 0;
    for (std::size_t row = 0; row < kRows; ++row) {
      now += step(chance) - 0.0005 * (now - 600.0);
      if (one_of(chance) == 0) silent_until = row + 400;
      const bool silent = row < silent_until || (row > 20'000 && row < 22'000) || one_of(chance) < 30;
      celsius.push_back(silent ? kNoReading : now);
    }
    made.column(name, std::move(celsius));
  }
  return made;
}

}  // namespace

TEST_CASE("Wide times a long way apart are two, wherever they begin and end") {
  constexpr std::size_t kRows = 20'000;
  for (const std::size_t last : {5'000U, 5'119U, 5'120U, 5'121U}) {
    CAPTURE(last);
    std::vector<double> hotter(kRows, 600.0);
    // The first wide time ends with row `last`, the second begins 3,073 rows after it.
    std::fill(hotter.begin() + static_cast<std::ptrdiff_t>(last) - 20,
              hotter.begin() + static_cast<std::ptrdiff_t>(last) + 1, 630.0);
    std::fill(hotter.begin() + static_cast<std::ptrdiff_t>(last) + 3'073,
              hotter.begin() + static_cast<std::ptrdiff_t>(last) + 3'094, 640.0);
    const Traced made(MadeRecord::every(1, kRows)
                          .column("TC1", std::vector<double>(kRows, 600.0))
                          .column("TC2", std::move(hotter)));
    const Spread spread = spread_of(made, limit(20.0));
    REQUIRE(spread.places.size() == 2);
    const auto last_s = static_cast<double>(last);
    CHECK(spread.places[0].time == Span{last_s - 20.0, last_s});
    CHECK(spread.places[1].time == Span{last_s + 3073.0, last_s + 3093.0});
    CHECK(spread.widest->kelvin == close_to(40.0));
  }
}

TEST_CASE("The spread of a long record is the same on one thread and on all") {
  std::size_t places = 0;
  for (const std::uint32_t seed : {20310402U, 20310403U, 20310404U}) {
    const Traced made(wandering(seed));
    for (const SpecifiedSpread& specified :
         {SpecifiedSpread{}, limit(15.0), SpecifiedSpread{605.0, {}, 12.0}}) {
      CAPTURE(seed, specified.above_c.value_or(0.0), specified.limit_k.value_or(0.0));
      const std::vector<Span> times = {{0, 40'000}, {50'000, made.time().second}};
      const Spread on_all = spread_of(made, specified, times);
      const LoopThreadLimit one(1);
      const Spread on_one = spread_of(made, specified, times);
      CHECK(told(made, on_all.widest) == told(made, on_one.widest));
      CHECK(told(made, on_all.largest) == told(made, on_one.largest));
      CHECK(on_all.surely == on_one.surely);
      REQUIRE(on_all.places.size() == on_one.places.size());
      for (std::size_t i = 0; i < on_one.places.size(); ++i) {
        CHECK(on_all.places[i].time == on_one.places[i].time);
        CHECK(told(made, on_all.places[i].widest) == told(made, on_one.places[i].widest));
      }
      places += on_one.places.size();
    }
  }
  CHECK(places > 50);
}
