// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/same_readings.h"

#include <random>
#include <string>

#include <catch2/catch.hpp>

#include "core/record/record_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

/// Rows of a run with two thermocouples, `noise` tenths either way.
std::vector<std::string> run(unsigned seed, int noise, int rows = 200) {
  std::mt19937 random{seed};
  std::vector<std::string> cells;
  for (int row = 0; row < rows; ++row) {
    std::string two;
    for (int channel = 0; channel < 2; ++channel) {
      const int level = row < 60 ? 200 + 90 * row : row < 140 ? 5600 : 5600 - 80 * (row - 140);
      const int tenths = level + 10 * channel +
                         (noise == 0 ? 0 : static_cast<int>(random() % unsigned(2 * noise + 1)) - noise);
      two += "," + std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
    }
    cells.push_back(two);
  }
  return cells;
}

std::shared_ptr<const Record> record_of(const std::vector<std::string>& rows, std::size_t first,
                                        std::size_t end, bool clock = false) {
  std::string text = clock ? "Time,TC1 (°C),TC2 (°C)\n" : "Time (min),TC1 (°C),TC2 (°C)\n";
  for (std::size_t row = first; row < end; ++row) {
    const std::string hour = std::to_string(10 + row / 60);
    const std::string minute = std::to_string(100 + row % 60).substr(1);
    text += (clock ? hour + ":" + minute + ":00" : std::to_string(row)) + rows[row] + "\n";
  }
  const WrittenLog log{text};
  return read_record(log.path(), nullptr).value();
}

}  // namespace

TEST_CASE("the same run is known by its readings, whatever its times") {
  const auto rows = run(7, 5);
  const auto whole = record_of(rows, 0, 200);
  CHECK(same_readings(*whole, *record_of(rows, 0, 200, true)));
  CHECK(same_readings(*whole, *record_of(rows, 0, 120)));
  CHECK(same_readings(*record_of(rows, 50, 200), *whole));
  CHECK(same_readings(*record_of(rows, 0, 140), *record_of(rows, 60, 200)));
  auto repaired = rows;
  repaired[100] = ",560.0,561.0";
  CHECK(same_readings(*whole, *record_of(repaired, 0, 200)));
}

TEST_CASE("another run of the same programme is another run") {
  CHECK_FALSE(same_readings(*record_of(run(7, 5), 0, 200), *record_of(run(8, 5), 0, 200)));
  // Less than half of either is the same.
  const auto rows = run(7, 5);
  CHECK_FALSE(same_readings(*record_of(rows, 0, 100), *record_of(rows, 60, 200)));
  // Without noise one run's part is like another's: only a whole record proves it.
  const auto smooth = run(0, 0);
  CHECK_FALSE(same_readings(*record_of(smooth, 0, 200), *record_of(smooth, 0, 120)));
  CHECK(same_readings(*record_of(smooth, 0, 200), *record_of(smooth, 0, 200, true)));
}
