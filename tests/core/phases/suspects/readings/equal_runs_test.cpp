// SPDX-License-Identifier: GPL-3.0-or-later
// Source: the definition of a run, reading by reading.
#include <random>

#include <catch2/catch.hpp>

#include "core/phases/suspects/readings/row_readings.h"

using namespace soakwright;

namespace {

/// "first-last(count) " of each run of known readings that are equal, missing ones between them left out.
std::string one_by_one(const RowReadings& channel, std::size_t least) {
  std::string text;
  std::size_t first = 0;
  std::size_t last = 0;
  std::size_t count = 0;
  const auto end = [&] {
    if (count >= least)
      text += std::to_string(first) + "-" + std::to_string(last) + "(" + std::to_string(count) + ") ";
    count = 0;
  };
  for (std::size_t row = 0; row < channel.rows(); ++row) {
    if (!channel.known(row)) continue;
    if (count > 0 && channel.units[row] != channel.units[last]) end();
    if (count == 0) first = row;
    last = row;
    ++count;
  }
  end();
  return text;
}

std::string found(const RowReadings& channel, std::size_t least) {
  std::string text;
  for (const RowRun& run : equal_runs(channel, least))
    text +=
        std::to_string(run.first) + "-" + std::to_string(run.last) + "(" + std::to_string(run.count) + ") ";
  return text;
}

}  // namespace

TEST_CASE("runs of equal readings are those that reading by reading finds, with and without missing ones") {
  std::mt19937 random(11);
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<std::int32_t> units;
    const bool complete = trial % 2 == 0;
    const unsigned stays = 2 + trial % 12;  // one reading in so many changes
    std::int32_t reading = 5;
    for (unsigned row = 0; row < 300 + random() % 40; ++row) {
      if (random() % stays == 0) reading += random() % 2 == 0 ? 1 : -1;
      const bool missing = !complete && random() % 9 == 0;
      units.push_back(missing ? Readings::kMissingUnits : reading);
    }
    RowReadings channel;
    channel.units = units;
    for (const std::size_t least : {2U, 3U, 12U, 40U}) {
      INFO("trial " << trial << ", at least " << least);
      CHECK(found(channel, least) == one_by_one(channel, least));
    }
  }
  CHECK(found(RowReadings{}, 2).empty());
}
