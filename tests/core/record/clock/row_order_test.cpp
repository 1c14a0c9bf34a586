// SPDX-License-Identifier: GPL-3.0-or-later
// Rows in disorder at the size of real logs: how many faults pass, and that no work grows with the square.
#include "core/record/clock/row_order.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/record/record_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

// The limit stands for any work that is not quadratic; the square of these rows takes minutes.
constexpr double kSoon_s = 20.0;

std::string row_text(std::size_t second, std::size_t reading) {
  char text[64];
  std::snprintf(text, sizeof text, "2031-04-%02zu %02zu:%02zu:%02zu,%zu.%zu\n", 2 + second / 86'400,
                second / 3600 % 24, second / 60 % 60, second % 60, 20 + reading / 10 % 500, reading % 10);
  return text;
}

struct Outcome {
  std::shared_ptr<const Record> record;
  std::string problem;
  double took_s = 0.0;
};

Outcome outcome_of(const std::string& rows) {
  const WrittenLog log{"Time,TC1 (°C)\n" + rows};
  const auto begin = std::chrono::steady_clock::now();
  const auto record = read_record(log.path(), nullptr);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
  if (!record) return {nullptr, record.problems().front().text(), took.count()};
  return {record.value(), {}, took.count()};
}

/// 1,000 rows a minute apart; `faults` times the clock is put back by 90 s.
std::string rows_with_faults(std::size_t faults, std::size_t rows = 1000) {
  std::string text;
  std::size_t second = 90 * faults;
  for (std::size_t row = 0; row < rows; ++row) {
    if (row % 9 == 8 && row / 9 < faults) second -= 90;
    text += row_text(second, row * 7);
    second += 60;
  }
  return text;
}

}  // namespace

TEST_CASE("one row in a hundred may have a clock fault, and not one more") {
  const Outcome passes = outcome_of(rows_with_faults(10));
  INFO(passes.problem);
  REQUIRE(passes.record);
  CHECK(passes.record->breaks.size() == 10);
  const Outcome refused = outcome_of(rows_with_faults(11));
  CHECK_FALSE(refused.record);
  CHECK_THAT(refused.problem, Catch::Contains("11 of 1000 rows"));
  CHECK(outcome_of(rows_with_faults(2, 99)).record);
  CHECK_FALSE(outcome_of(rows_with_faults(3, 99)).record);
  CHECK_FALSE(outcome_of(rows_with_faults(2, 100)).record);
}

TEST_CASE("rows in random order are refused soon") {
  std::vector<std::size_t> order(300'000);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::shuffle(order.begin(), order.end(), std::mt19937{20310402});
  std::string rows;
  for (const std::size_t row : order) rows += row_text(row, row * 7);
  const Outcome outcome = outcome_of(rows);
  CHECK_FALSE(outcome.record);
  CHECK_THAT(outcome.problem, Catch::Contains("time does not run forward"));
  CHECK(outcome.took_s < kSoon_s);
}

TEST_CASE("stamps that alternate between two times or two clocks are refused soon") {
  for (const std::size_t apart : {std::size_t{0}, std::size_t{5'000}}) {
    std::string rows;
    for (std::size_t row = 0; row < 300'000; ++row) {
      const std::size_t second = apart == 0 ? 100 + row % 2 : 10'000 + row / 2 - row % 2 * apart;
      rows += row_text(second, row * 7 + row % 3);
    }
    const Outcome outcome = outcome_of(rows);
    INFO(apart);
    CHECK_FALSE(outcome.record);
    CHECK(outcome.took_s < kSoon_s);
  }
}

TEST_CASE("a log whose every other pair of rows changed places is sorted") {
  std::string rows;
  for (std::size_t row = 0; row < 300'000; ++row) {
    const std::size_t swapped = row % 4 == 1 ? row + 1 : row % 4 == 2 ? row - 1 : row;
    rows += row_text(swapped, swapped * 7);
  }
  const Outcome outcome = outcome_of(rows);
  INFO(outcome.problem);
  REQUIRE(outcome.record);
  CHECK(outcome.took_s < kSoon_s);
  CHECK(outcome.record->breaks.empty());
  CHECK(outcome.record->times_s[299'999] == 299'999.0);
  CHECK(outcome.record->channels[0].readings.celsius(5) == 23.5);
  REQUIRE(outcome.record->notices.size() == 1);
  CHECK(outcome.record->notices[0].code == "row-order");
  CHECK(outcome.record->notices[0].line == 3);
  CHECK(outcome.record->notices[0].count == 150'000);
}

TEST_CASE("a long export that holds another one again is read once") {
  std::string rows;
  for (std::size_t row = 0; row < 200'000; ++row) rows += row_text(row, row * 7);
  for (std::size_t row = 100'000; row < 300'000; ++row) rows += row_text(row, row * 7);
  const Outcome outcome = outcome_of(rows);
  INFO(outcome.problem);
  REQUIRE(outcome.record);
  CHECK(outcome.took_s < kSoon_s);
  CHECK(outcome.record->rows() == 300'000);
  CHECK(outcome.record->interval_s == 1.0);
  REQUIRE(outcome.record->notices.size() == 1);
  CHECK(outcome.record->notices[0].code == "repeat-rows");
  CHECK(outcome.record->notices[0].line == 200'002);
  CHECK(outcome.record->notices[0].count == 100'000);
}
