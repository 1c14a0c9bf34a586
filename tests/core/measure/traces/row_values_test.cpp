// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/row_values.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

/// The values of one member of the group at every row: "100 - 220", a dash where unknown.
std::string row_values(const Traced& made, std::size_t member) {
  std::string text;
  RowValues rows(made.record, made.set, made.group);
  rows.visit_tiles(made.record.first_row, made.record.end_row,
                   [&](std::size_t, std::size_t count, const std::vector<ColumnTile>& columns) {
                     const ColumnTile& column = columns[member];
                     for (std::size_t r = 0; r < count; ++r) {
                       if (!text.empty()) text += ' ';
                       text += column.known == nullptr || column.known[r] != 0 ? say(column.celsius[r]) : "-";
                     }
                     return true;
                   });
  return text;
}

}  // namespace

TEST_CASE("Row values agree with the trace at every row, whatever is missing or excluded") {
  constexpr double none = kNoReading;
  SECTION("complete") {
    CHECK(row_values(Traced(MadeRecord::every(60, 3).column("TC1", {1, 2, 3})), 0) == "1 2 3");
  }
  SECTION("an empty cell within the interpolate_max is on the line") {
    CHECK(row_values(Traced(MadeRecord::every(60, 5).column("TC1", {10, none, 30, none, none})), 0) ==
          "10 20 30 - -");
  }
  SECTION("beyond the interpolate_max it is unknown") {
    CHECK(row_values(Traced(MadeRecord::every(60, 4).column("TC1", {10, none, none, 40}), 120), 0) ==
          "10 - - 40");
  }
  SECTION("excluded, the readings beside it stay") {
    const MadeRecord made = MadeRecord::every(60, 5).column("TC1", {1, 2, 3, 4, 5});
    CHECK(row_values(Traced(MadeRecord(made).exclusion("TC1", 60, 180)), 0) == "1 - - - 5");
    CHECK(row_values(Traced(MadeRecord(made).exclusion("TC1", 61, 179)), 0) == "1 2 - 4 5");
  }
  SECTION("a take-over: the main channel's at its instant, then the spare's") {
    const Traced made(MadeRecord::every(60, 5)
                          .column("TC1", {1, 2, none, none, none})
                          .column("TC9", {11, 12, 13, 14, 15})
                          .spare("TC9", "TC1"));
    CHECK(row_values(made, 0) == "1 2 13 14 15");
  }
  SECTION("only the evaluated rows") {
    CHECK(row_values(Traced(MadeRecord::every(60, 5).column("TC1", {1, 2, 3, 4, 5}).time_range(1, 4)), 0) ==
          "2 3 4");
  }
}

TEST_CASE("Rows of a long record with holes agree with the trace, tile by tile") {
  std::vector<double> values;
  for (std::size_t row = 0; row < 1400; ++row) {
    const bool empty = row % 97 < row % 5 || (row > 500 && row < 530);
    values.push_back(empty ? kNoReading : static_cast<double>(row % 50));
  }
  const Traced made(MadeRecord::every(30, values.size()).column("TC1", values), 60);
  std::string expected;
  for (std::size_t row = 0; row < values.size(); ++row) {
    const auto celsius = temperature_at(made.set.traces[0], made.record.times_s[row]);
    if (!expected.empty()) expected += ' ';
    expected += celsius ? say(*celsius) : "-";
  }
  CHECK(row_values(made, 0) == expected);
}
