// SPDX-License-Identifier: GPL-3.0-or-later
// In logs of hundreds of columns not every pair is compared; copies must be found all the same.
#include "core/phases/suspects/readings/equal_columns.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "tests/core/phases/drawn_record.h"

using namespace soakwright;

namespace {

constexpr std::size_t kMany = 230;  // more than are compared pair by pair
constexpr double kHour = 3600.0;

made::Drawing relief() {
  made::Drawing drawing;
  drawing.points = {{0.0, 20.0}, {2.0 * kHour, 605.0}, {3.0 * kHour, 605.0}, {5.0 * kHour, 60.0}};
  drawing.noise_k = 0.3;
  drawing.channels = kMany;
  return drawing;
}

void copy_from_row(Record& record, std::size_t from, std::size_t to, std::size_t first_row) {
  const Readings source = record.channels[from].readings;
  const Readings own = record.channels[to].readings;
  std::vector<double> celsius;
  for (std::size_t row = 0; row < record.rows(); ++row)
    celsius.push_back(*(row < first_row ? own : source).celsius(row));
  record.channels[to] = made::channel_of(record.channels[to].name, celsius, std::vector<char>(celsius.size()),
                                         TemperatureUnit::celsius, 1);
}

std::set<std::size_t> copies(const Record& record) {
  std::set<std::size_t> found;
  for (const Suspect& suspect : course_of(record).suspects)
    if (suspect.code == Suspect::Code::copied) found.insert(suspect.channel);
  return found;
}

/// A table of one row block for each of `columns`.
RowTable table_of(const std::vector<std::vector<std::int32_t>>& columns) {
  RowTable table;
  table.joined.assign(columns.front().size(), 1);
  for (const auto& units : columns) {
    RowReadings channel;
    channel.units = units;
    table.channels.push_back(channel);
  }
  return table;
}

std::vector<std::int32_t> rising(std::size_t rows, std::int32_t from) {
  std::vector<std::int32_t> units;
  for (std::size_t row = 0; row < rows; ++row) units.push_back(from + static_cast<std::int32_t>(row));
  return units;
}

bool any_place(std::size_t /*place*/) { return true; }

}  // namespace

TEST_CASE("copies among many columns are found, whole, from halfway on, and all of them") {
  Record record = made::draw(relief());
  CHECK(copies(record).empty());
  copy_from_row(record, 3, 199, 0);
  copy_from_row(record, 5, 7, record.rows() / 2);
  CHECK(copies(record) == std::set<std::size_t>{7, 199});
  for (std::size_t channel = 1; channel < kMany; ++channel) copy_from_row(record, 0, channel, 0);
  CHECK(copies(record).size() == kMany - 1);
}

TEST_CASE("few channels are all compared, many only with their equals") {
  const std::vector<std::vector<std::int32_t>> columns = {rising(40, 0), rising(40, 7), rising(40, 0)};
  using Places = std::vector<std::vector<std::size_t>>;
  CHECK(pairs_to_compare(table_of(columns), any_place, 3) == Places{{1, 2}, {2}, {}});
  CHECK(pairs_to_compare(table_of(columns), any_place, 2) == Places{{2}, {}, {}});
}

TEST_CASE("columns without change, or of which it is said that they do not scatter, are not compared") {
  const std::vector<std::vector<std::int32_t>> level(3, std::vector<std::int32_t>(40, 200));
  const std::vector<std::vector<std::int32_t>> alike(3, rising(40, 0));
  for (const auto& later : pairs_to_compare(table_of(level), any_place, 2)) CHECK(later.empty());
  const auto none = [](std::size_t /*place*/) { return false; };
  for (const auto& later : pairs_to_compare(table_of(alike), none, 2)) CHECK(later.empty());
}

TEST_CASE("thousands of equal columns are each compared with the first fifty only") {
  const auto later = pairs_to_compare(table_of(std::vector(300, rising(40, 0))), any_place);
  CHECK(later[0].size() == 299);
  CHECK(later[49].size() == 250);
  CHECK(later[50].empty());
}

TEST_CASE("equal columns are known by the first of them; one reading makes two different") {
  std::vector<std::vector<std::int32_t>> columns(4, rising(500, 0));
  columns[2][333] += 1;  // between the rows that are looked at first
  CHECK(first_equal_places(table_of(columns)) == std::vector<std::size_t>{0, 0, 2, 0});
}
