// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/extremes.h"

#include <random>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

std::string told(const Traced& made, const std::optional<ReadingAt>& reading) {
  if (!reading) return "none";
  std::string text = made.set.traces[reading->trace].name;
  text += ' ';
  text += say(reading->celsius);
  text += " at ";
  text += say(reading->at_s);
  return text;
}

MadeRecord two() {
  return MadeRecord::every(60, 5).column("TC1", {10, 30, 20, 30, 5}).column("TC2", {12, 30, 31, 4, 5});
}

}  // namespace

TEST_CASE("The highest and lowest readings within a time, the first of equals") {
  const Traced made(two());
  CHECK(told(made, highest_reading(made.set, made.group, {0, 240})) == "TC2 31 at 120");
  CHECK(told(made, lowest_reading(made.set, made.group, {0, 240})) == "TC2 4 at 180");
  CHECK(told(made, highest_reading(made.set, made.group, {0, 60})) == "TC1 30 at 60");
  CHECK(told(made, highest_reading(made.set, made.group, {180, 240})) == "TC1 30 at 180");
  CHECK(told(made, lowest_reading(made.set, made.group, {240, 240})) == "TC1 5 at 240");
  CHECK(told(made, highest_reading(made.set, made.group, {61, 119})) == "none");
}

TEST_CASE("Extremes and summaries of long records are those of a search through every reading") {
  std::mt19937 chance(20310404);
  std::uniform_int_distribution<int> tenths(0, 400);  // few values: equals are common
  MadeRecord record = MadeRecord::every(10, 1000);
  std::vector<std::vector<double>> columns(3);
  for (std::size_t c = 0; c < 3; ++c) {
    for (int row = 0; row < 1000; ++row) columns[c].push_back(0.1 * tenths(chance));
    record.column("TC" + std::to_string(c + 1), columns[c]);
  }
  const Traced made(record);
  for (const auto& [first, last] : std::vector<std::pair<std::size_t, std::size_t>>{
           {0, 999}, {1, 998}, {63, 64}, {64, 127}, {100, 700}, {500, 500}}) {
    CAPTURE(first, last);
    const Span time{10.0 * static_cast<double>(first), 10.0 * static_cast<double>(last)};
    std::optional<ReadingAt> high;
    std::optional<ReadingAt> low;
    for (std::size_t row = first; row <= last; ++row)
      for (std::size_t c = 0; c < 3; ++c) {
        const ReadingAt here{c, 10.0 * static_cast<double>(row), made.set.traces[c].sources[0].c[row], 0};
        if (!high || here.celsius > high->celsius) high = here;
        if (!low || here.celsius < low->celsius) low = here;
      }
    CHECK(told(made, highest_reading(made.set, made.group, time)) == told(made, high));
    CHECK(told(made, lowest_reading(made.set, made.group, time)) == told(made, low));
    CHECK(told(made, highest_of_each(made.set, made.group, time)[high->trace]) == told(made, high));
    double sum = 0.0;
    double most = 0.0;
    for (std::size_t row = first; row <= last; ++row) {
      sum += columns[1][row];
      most = std::max(most, columns[1][row]);
    }
    const auto summary = summary_of(made.set.traces[1], {time});
    REQUIRE(summary);
    CHECK(summary->mean_c == close_to(sum / static_cast<double>(last - first + 1), 1e-9));
    CHECK(summary->max_c == close_to(most, 1e-9));
  }
}

TEST_CASE("A reading within a thousandth of a second of a time belongs to it") {
  const Traced made(two());
  CHECK(told(made, highest_reading(made.set, made.group, {0, 59.9991})) == "TC1 30 at 60");
  CHECK(told(made, highest_reading(made.set, made.group, {0, 59.9989})) == "TC2 12 at 0");
}

TEST_CASE("Readings excluded are no extremes") {
  const Traced made(two().exclusion("TC2", 100, 190));
  CHECK(told(made, highest_reading(made.set, made.group, {0, 240})) == "TC1 30 at 60");
  CHECK(told(made, lowest_reading(made.set, made.group, {0, 240})) == "TC1 5 at 240");
}

TEST_CASE("Places above a level run from crossing to crossing") {
  // 10 to 30: 20 half way, 30 s. TC1 only touches 20 at 120 s; 30 to 5: 20 after 24 s.
  const Traced made(two());
  const auto places = places_above(made.set, made.group, {0, 240}, 20);
  REQUIRE(places.size() == 2);
  CHECK(say(places[0].time) == "30..204");
  CHECK(told(made, places[0].hottest) == "TC1 30 at 60");
  CHECK(told(made, places[1].hottest) == "TC2 31 at 120");
  CHECK(places_above(made.set, made.group, {0, 240}, 31).empty());  // at the level is not above it
}

TEST_CASE("The summary of a channel is over its readings in all the times") {
  const Traced made(two());
  const auto summary = summary_of(made.set.traces[0], {{0, 60}, {180, 240}});
  REQUIRE(summary);
  CHECK(summary->min_c == 5);
  CHECK(summary->max_c == 30);
  CHECK(summary->mean_c == close_to((10 + 30 + 30 + 5) / 4.0));
  CHECK_FALSE(summary_of(made.set.traces[0], {{61, 119}}));
}
