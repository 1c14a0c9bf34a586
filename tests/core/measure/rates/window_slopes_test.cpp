// SPDX-License-Identifier: GPL-3.0-or-later
// Which samples a window holds, which windows there are, and the ticks in which times are counted.
#include "core/measure/rates/window_slopes.h"

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/rates/all_windows.h"

using namespace soakwright;

namespace {

/// The steepest of all windows in a direction, told of only what is steeper than all before.
double steepest_of(const Traced& made, double width_s, double sign) {
  const RowTicks ticks = row_ticks(made.record);
  const Trace& trace = made.set.traces[0];
  const TraceSource& source = trace.sources[0];
  const Piece& piece = trace.pieces[0];
  const IntegerSamples samples = integer_samples(made.record, ticks, source, piece.first, piece.end);
  double steepest = -std::numeric_limits<double>::infinity();
  visit_windows(
      source, samples, piece.first, piece.end, {piece.from, piece.to}, width_s, sign,
      [&](const WindowShape&) { return steepest; },
      [&](std::size_t, double slope, const WindowShape&) { steepest = std::max(steepest, slope); });
  return steepest;
}

}  // namespace

TEST_CASE("A window holds the samples within half its width, ends included, and at least five") {
  // Rows every 60 s; a window of 240 s has exactly five rows, one of 239 s only three.
  const Traced made(MadeRecord::every(60, 20).course("TC1", {{0, 20}, {19, 210}}));
  const auto five = windows_of(made, 240);
  REQUIRE(five.size() == 16);
  CHECK(five[0].samples == 5);
  CHECK(five[0].at_s == 120);
  CHECK(five[0].from_s == 0);
  CHECK(five[0].to_s == 240);
  CHECK(five[0].slope_c_per_h == close_to(600));
  CHECK(windows_of(made, 239).empty());
  // A sample 5e-7 s beyond the window's end still belongs to it, one 5e-6 s beyond does not.
  std::vector<double> times;
  for (int row = 0; row < 20; ++row) times.push_back(60.0 * row + (row == 12 ? 5e-7 : 0.0));
  const Traced near(MadeRecord(times).course("TC1", {{0, 20}, {19, 210}}));
  std::size_t fives = 0;
  for (const WindowSlope& window : windows_of(near, 240)) fives += window.samples == 5 ? 1 : 0;
  CHECK(fives == windows_of(near, 240).size());
}

TEST_CASE("Who asks for steeper windows only misses none of them, up or down, on even or uneven steps") {
  std::mt19937 chance(20310403);
  std::uniform_int_distribution<int> noise(-20, 20);
  enum class Steps { even, uneven, row_missing };
  for (const Steps steps : {Steps::even, Steps::uneven, Steps::row_missing})
    for (int trial = 0; trial < 50; ++trial) {
      std::vector<double> times;
      std::vector<double> values;
      for (int row = 0; row < 120; ++row) {
        if (steps == Steps::row_missing && (row == 17 + trial || row == 100)) continue;
        times.push_back(row * 10.0 + (steps == Steps::uneven ? 0.1 * noise(chance) / 10.0 : 0.0));
        values.push_back(300 + 0.5 * row + 0.1 * noise(chance));
      }
      times[0] = 0.0;
      const Traced made(MadeRecord(times).column("TC1", values));
      double up = -1e9;
      double down = -1e9;
      for (const WindowSlope& window : windows_of(made, 300)) {
        up = std::max(up, window.slope_c_per_h);
        down = std::max(down, -window.slope_c_per_h);
      }
      CAPTURE(static_cast<int>(steps), trial);
      CHECK(steepest_of(made, 300, 1.0) == up);
      CHECK(steepest_of(made, 300, -1.0) == down);
    }
}

TEST_CASE("Fewer than five samples have no slope") {
  IntegerSamples samples;
  samples.tick_s = 1.0;
  samples.unit_k = 1.0;
  samples.own_ticks = {0, 1, 2, 3, 4};
  samples.ticks = samples.own_ticks;
  samples.units = {0, 1, 2, 3, 4};
  CHECK_FALSE(slope_over(samples, 0, 4, {0, 3}));
  REQUIRE(slope_over(samples, 0, 5, {0, 4}));
  CHECK(slope_over(samples, 0, 5, {0, 4})->slope_c_per_h == close_to(3600));
}

TEST_CASE("The tick of a record is the longest that all its times are whole multiples of") {
  CHECK(row_ticks(MadeRecord({0, 20, 40, 100}).column("TC1", {1, 2, 3, 4}).record()).tick_s == 20);
  CHECK(row_ticks(MadeRecord({0, 1.5, 2}).column("TC1", {1, 2, 3}).record()).tick_s == close_to(0.5, 1e-12));
  const RowTicks ticks = row_ticks(MadeRecord({0, 0.001, 10}).column("TC1", {1, 2, 3}).record());
  CHECK(ticks.tick_s == close_to(0.001, 1e-15));
  CHECK(ticks.ticks == std::vector<std::int64_t>{0, 1, 10000});
}
