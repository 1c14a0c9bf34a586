// SPDX-License-Identifier: GPL-3.0-or-later
// The largest spread of a phase, found on the log's whole numbers where that can be done, against the plain
// definition: highest less lowest of the channels known in a row.
#include "core/phases/phase_spread.h"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <random>

#include <catch2/catch.hpp>

#include "core/phases/decimal_extent.h"

namespace soakwright {
namespace {

constexpr std::size_t kRows = 10'000;  // several blocks, the last one not full

/// Channels with readings at random, one of seven missing, in tenths.
Record random_record(unsigned seed, std::size_t channels, int places = 1) {
  std::mt19937 random{seed};
  std::uniform_int_distribution<std::int32_t> tenths{-400, 12'000};
  std::uniform_int_distribution<int> one_of_seven{0, 6};
  Record record;
  for (std::size_t row = 0; row < kRows; ++row) record.times_s.push_back(static_cast<double>(row));
  record.end_row = kRows;
  for (std::size_t c = 0; c < channels; ++c) {
    const std::shared_ptr<std::int32_t[]> units{new std::int32_t[kRows]};
    std::size_t missing = 0;
    for (std::size_t row = 0; row < kRows; ++row) {
      const bool lost = one_of_seven(random) == 0;
      units[static_cast<std::ptrdiff_t>(row)] = lost ? Readings::kMissingUnits : tenths(random);
      missing += lost ? 1U : 0U;
    }
    Channel channel;
    channel.readings =
        Readings::of_decimals(units, kRows, missing, DecimalScale::of(TemperatureUnit::celsius, places));
    record.channels.push_back(std::move(channel));
  }
  return record;
}

/// Highest less lowest, row by row, as the definition says.
double spread_by_definition(const Record& record, const Phase& phase) {
  double most = 0.0;
  for (std::size_t row = 0; row < kRows; ++row) {
    const double at = record.times_s[row];
    if (at < phase.start_s || at > phase.end_s) continue;
    double high = -std::numeric_limits<double>::infinity();
    double low = std::numeric_limits<double>::infinity();
    for (std::size_t c = 0; c < record.channels.size(); ++c) {
      const auto celsius = record.channels[c].readings.celsius(row);
      const bool exclusion =
          std::any_of(record.exclusions.begin(), record.exclusions.end(), [&](const Exclusion& time_range) {
            return time_range.channel == c && at >= time_range.from_s && at <= time_range.to_s;
          });
      if (!celsius || exclusion) continue;
      high = std::max(high, *celsius);
      low = std::min(low, *celsius);
    }
    most = std::max(most, high - low);
  }
  return most;
}

std::vector<Phase> phases_between(const std::vector<double>& corners) {
  std::vector<Phase> phases;
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    Phase phase;
    phase.start_s = corners[i];
    phase.end_s = corners[i + 1];
    phases.push_back(phase);
  }
  return phases;
}

TEST_CASE("the spread of a phase is the highest less the lowest, however the readings are kept") {
  Record record = random_record(20310411, 5);
  SECTION("decimals") {}
  SECTION("a time_range excluded") { record.exclusions.push_back({2, 4000.0, 6500.0, "not on the work"}); }
  SECTION("one channel of doubles") {
    record.channels[3].readings = record.channels[3].readings.corrected({});
  }
  SECTION("one channel of other places") {
    const Record other = random_record(7, 1, 2);
    record.channels[1].readings = other.channels[0].readings;
  }
  std::vector<Phase> phases = phases_between({0.0, 31.5, 2999.0, 3000.0, 9998.5, 9999.0});
  measure_spread(record, phases);
  for (const Phase& phase : phases) {
    INFO("from " << phase.start_s << " to " << phase.end_s);
    CHECK(phase.spread_max_k == Approx(spread_by_definition(record, phase)).margin(1e-9));
  }
}

TEST_CASE("the spread of decimals is exact, and one channel alone has none") {
  Record record = random_record(3, 1);
  std::vector<Phase> phases = phases_between({0.0, 9999.0});
  measure_spread(record, phases);
  CHECK(phases[0].spread_max_k == 0.0);

  DecimalExtent extent(3);
  extent.take(0, std::vector<std::int32_t>{6003, Readings::kMissingUnits, INT32_MAX}.data(), 3);
  extent.take(0, std::vector<std::int32_t>{5841, 20, -INT32_MAX}.data(), 2);
  CHECK(extent.widest() == 162);
  extent.take(2, std::vector<std::int32_t>{-INT32_MAX}.data(), 1);
  CHECK(extent.widest() == 4'294'967'294U);  // 2^32 - 2, more than 32 bits with a sign hold
}

}  // namespace
}  // namespace soakwright
