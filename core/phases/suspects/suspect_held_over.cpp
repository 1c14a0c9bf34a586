// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_held_over.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace soakwright {

namespace {

constexpr double kLongerThanS = 60.0;       // a scanner that is slower than its log by less is usual
constexpr std::size_t kFewestHeldRows = 4;  // that a reading lasts
constexpr std::size_t kFewestTimes = 8;     // it changes so often
// Of the changes: so many come after the usual number of rows, so many are of most channels at once, so many
// are large.
constexpr double kEvenShare = 0.8;
constexpr double kTogetherShare = 0.7;
constexpr double kLargeShare = 0.25;
constexpr std::int64_t kLargeDigits = 4;

/// Whether a channel reads otherwise than in the row before.
bool any_changed(const RowTable& table, std::size_t row) {
  return std::any_of(table.channels.begin(), table.channels.end(), [row](const RowReadings& channel) {
    return channel.evaluated && channel.units[row] != channel.units[row - 1] && channel.known(row) &&
           channel.known(row - 1);
  });
}

}  // namespace

std::vector<Suspect> find_held_over(const RowTable& table) {
  std::size_t together = 0;
  std::size_t large = 0;
  std::size_t evaluated = 0;
  for (const RowReadings& channel : table.channels) evaluated += channel.evaluated ? 1 : 0;
  if (evaluated == 0) return {};
  const std::size_t most_changes = table.rows() / kFewestHeldRows;
  std::vector<std::size_t> changes;  // rows
  for (std::size_t row = 1; row < table.rows(); ++row) {
    if (!any_changed(table, row)) continue;
    changes.push_back(row);
    // Most records end here: their first channels tell it, and no other need be looked at.
    if (changes.size() > most_changes) return {};
  }
  if (changes.size() < kFewestTimes) return {};
  for (const std::size_t row : changes) {
    std::size_t known = 0;
    std::size_t changed = 0;
    std::size_t by_much = 0;
    for (const RowReadings& channel : table.channels) {
      if (!channel.evaluated || !channel.known(row) || !channel.known(row - 1)) continue;
      ++known;
      const std::int64_t change =
          std::abs(std::int64_t{channel.units[row]} - std::int64_t{channel.units[row - 1]});
      if (change != 0) ++changed;
      if (change >= kLargeDigits * channel.digit) ++by_much;
    }
    if (static_cast<double>(changed) >= kTogetherShare * static_cast<double>(known)) ++together;
    if (2 * by_much >= known) ++large;
  }
  std::vector<std::size_t> lengths;
  for (std::size_t i = 1; i < changes.size(); ++i) lengths.push_back(changes[i] - changes[i - 1]);
  std::vector<std::size_t> sorted = lengths;
  std::nth_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2),
                   sorted.end());
  const std::size_t usual = sorted[sorted.size() / 2];
  const double held_s = static_cast<double>(usual) * table.record->interval_s;
  if (usual < kFewestHeldRows || held_s <= kLongerThanS) return {};
  const auto even =
      static_cast<double>(std::count_if(lengths.begin(), lengths.end(), [&](std::size_t length) {
        return length + 1 >= usual && length <= usual + 1;
      }));
  const auto share_of = [](double part, std::size_t all) { return part / static_cast<double>(all); };
  if (share_of(even, lengths.size()) < kEvenShare ||
      share_of(static_cast<double>(together), changes.size()) < kTogetherShare ||
      share_of(static_cast<double>(large), changes.size()) < kLargeShare)
    return {};
  std::vector<Suspect> suspects;
  for (std::size_t i = 0; i < table.channels.size(); ++i) {
    if (!table.channels[i].evaluated) continue;
    Suspect suspect;
    suspect.channel = table.channels[i].channel;
    suspect.code = Suspect::Code::stuck;
    suspect.from_s = table.time_s(0);
    suspect.to_s = table.time_s(table.rows() - 1);
    suspect.evidence = {.kind = SuspectEvidence::Kind::held_over_rows, .seconds = held_s, .count = usual};
    suspects.push_back(suspect);
  }
  return suspects;
}

}  // namespace soakwright
