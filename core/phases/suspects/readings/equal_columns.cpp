// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/readings/equal_columns.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <numeric>
#include <optional>
#include <unordered_map>

namespace soakwright {
namespace {

// Blocks start every kBlockRows rows and share their last row with the next one, so that no change is between
// two of them. A run of 40 rows holds a whole block.
constexpr std::size_t kBlockRows = 16;
constexpr std::size_t kFirstOfBlock = 50;

std::uint64_t mixed(std::uint64_t number, std::int32_t reading) {
  number = (number ^ static_cast<std::uint32_t>(reading)) * 0x9E3779B97F4A7C15U;
  return number ^ (number >> 29U);
}

/// A number for the readings of rows [first, first + kBlockRows]; nullopt if they do not change.
std::optional<std::uint64_t> block_number(const RowReadings& channel, std::size_t first) {
  std::uint64_t number = std::bit_cast<std::uint64_t>(channel.kelvin_per_unit);
  bool changes = false;
  for (std::size_t row = first; row <= first + kBlockRows; ++row) {
    changes = changes || (row > first && channel.known(row) && channel.known(row - 1) &&
                          channel.units[row] != channel.units[row - 1]);
    number = mixed(number, channel.units[row]);
  }
  return changes ? std::optional(number) : std::nullopt;
}

std::vector<std::vector<std::size_t>> all_pairs(std::size_t channels) {
  std::vector<std::vector<std::size_t>> later(channels);
  for (std::size_t a = 0; a < channels; ++a) {
    later[a].resize(channels - a - 1);
    std::iota(later[a].begin(), later[a].end(), a + 1);
  }
  return later;
}

}  // namespace

std::vector<std::vector<std::size_t>> pairs_to_compare(const RowTable& table,
                                                       const std::function<bool(std::size_t)>& scatters,
                                                       std::size_t compare_all_up_to) {
  const std::size_t channels = table.channels.size();
  if (channels <= compare_all_up_to) return all_pairs(channels);
  std::vector<std::size_t> listed;
  for (std::size_t place = 0; place < channels; ++place)
    if (scatters(place)) listed.push_back(place);
  std::vector<std::vector<std::size_t>> later(channels);
  std::unordered_map<std::uint64_t, std::vector<std::size_t>> equal;
  for (std::size_t first = 0; first + kBlockRows < table.rows(); first += kBlockRows) {
    equal.clear();
    for (const std::size_t place : listed)
      if (const auto number = block_number(table.channels[place], first)) equal[*number].push_back(place);
    for (const auto& [number, places] : equal)
      for (std::size_t i = 0; i < std::min(places.size(), kFirstOfBlock); ++i)
        later[places[i]].insert(later[places[i]].end(), places.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                                places.end());
  }
  for (std::vector<std::size_t>& places : later) {
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
  }
  return later;
}

std::vector<std::size_t> first_equal_places(const RowTable& table) {
  constexpr std::size_t kRowsLookedAt = 64;  // enough to tell most columns apart
  const std::size_t step = std::max<std::size_t>(1, table.rows() / kRowsLookedAt);
  std::unordered_map<std::uint64_t, std::vector<std::size_t>> different;
  std::vector<std::size_t> first(table.channels.size());
  for (std::size_t place = 0; place < first.size(); ++place) {
    const RowReadings& channel = table.channels[place];
    std::uint64_t number = std::bit_cast<std::uint64_t>(channel.kelvin_per_unit);
    for (std::size_t row = 0; row < channel.rows(); row += step) number = mixed(number, channel.units[row]);
    std::vector<std::size_t>& like_it = different[number];
    const auto equal = std::find_if(like_it.begin(), like_it.end(), [&](std::size_t other) {
      return table.channels[other].kelvin_per_unit == channel.kelvin_per_unit &&
             std::ranges::equal(table.channels[other].units, channel.units);
    });
    first[place] = equal != like_it.end() ? *equal : place;
    if (equal == like_it.end()) like_it.push_back(place);
  }
  return first;
}

}  // namespace soakwright
