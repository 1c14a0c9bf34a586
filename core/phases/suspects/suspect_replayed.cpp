// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <optional>

#include "core/phases/suspects/suspect_copied.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

// A place to look: the hash of so many rows on end, all of which differ from the row before.
constexpr std::size_t kAnchorRows = 4;
constexpr std::size_t kFirstOfAnchor = std::size_t{1} << 32U;  // its factors are none of a channel
// Rows that repeat others by chance would have to meet so many strong bends of all channels, and readings.
constexpr std::size_t kFewestStrongTogether = 40;
constexpr std::size_t kFewestChangesTogether = 80;
constexpr std::size_t kFewestReplayedRows = 8;
constexpr std::size_t kHashedTogether = 2048;  // rows whose hashes stay in the processor's nearest memory
constexpr std::size_t kMostLooks = 64;         // at one anchor's matches that come to nothing

/// Odd factors whose digits have no pattern (the finalizer of splitmix64, Steele, Lea and Flood 2014).
std::uint64_t factor_of(std::size_t place) {
  std::uint64_t x = 0x9E3779B97F4A7C15U * (place + 1);
  x = (x ^ (x >> 30U)) * 0xBF58476D1CE4E5B9U;
  x = (x ^ (x >> 27U)) * 0x94D049BB133111EBU;
  return (x ^ (x >> 31U)) | 1U;
}

/// Of each row the sum of its readings, each times its channel's factor: rows that differ hardly ever have
/// the same.
std::vector<std::uint64_t> row_hashes(const RowTable& table) {
  std::vector<std::uint64_t> hashes(table.rows());
  const std::size_t blocks = (hashes.size() + kHashedTogether - 1) / kHashedTogether;
  parallel_for(blocks, hashes.size() * table.channels.size(), [&](std::size_t block) {
    const std::size_t first = block * kHashedTogether;
    const std::size_t end = std::min(first + kHashedTogether, hashes.size());
    for (std::size_t place = 0; place < table.channels.size(); ++place) {
      const RowReadings& channel = table.channels[place];
      if (!channel.evaluated) continue;
      const std::uint64_t factor = factor_of(place);
      for (std::size_t row = first; row < end; ++row)
        hashes[row] += factor * static_cast<std::uint32_t>(channel.units[row]);
    }
  });
  return hashes;
}

/// Whether [first, last] holds what no chance repeats.
bool tells(const RowTable& table, std::size_t first, std::size_t last) {
  std::size_t strong = 0;
  std::size_t changes = 0;
  for (const RowReadings& channel : table.channels) {
    if (!channel.evaluated) continue;
    for (std::size_t row = first + 1; row < last; ++row) {
      if (!channel.known(row - 1) || !channel.known(row) || !channel.known(row + 1)) continue;
      const std::int64_t before = std::int64_t{channel.units[row]} - std::int64_t{channel.units[row - 1]};
      const std::int64_t after = std::int64_t{channel.units[row + 1]} - std::int64_t{channel.units[row]};
      if (before != 0) ++changes;
      if (before * after < 0 && std::max(before * before, after * after) >= channel.digit * channel.digit &&
          (after - before >= kStrongDigits * channel.digit ||
           before - after >= kStrongDigits * channel.digit))
        ++strong;
    }
    if (strong >= kFewestStrongTogether && changes >= kFewestChangesTogether) return true;
  }
  return false;
}

/// A row beside the nearest earlier one of the same anchor.
struct Pair {
  std::size_t row = 0;
  std::size_t earlier = 0;
};

/// The last row of each anchor seen so far: open addressing, at most half full.
class LastRows {
 public:
  explicit LastRows(std::size_t rows) : slots_(std::bit_ceil(2 * rows + 1)), mask_(slots_.size() - 1) {}

  /// The row that was last put in with this hash, if there is one; `row` takes its place.
  std::optional<std::size_t> exchange(std::uint64_t hash, std::size_t row) {
    std::size_t at = static_cast<std::size_t>(hash ^ (hash >> 32U)) & mask_;
    const auto tag = static_cast<std::uint32_t>(hash >> 24U);
    while (slots_[at].row_plus_1 != 0 && slots_[at].tag != tag) at = (at + 1) & mask_;
    Slot& slot = slots_[at];
    std::optional<std::size_t> before;
    if (slot.row_plus_1 != 0) before = slot.row_plus_1 - 1;
    slot = {tag, static_cast<std::uint32_t>(row + 1)};
    return before;
  }

 private:
  struct Slot {
    std::uint32_t tag = 0;         ///< of the hash: the rows themselves are compared after it
    std::uint32_t row_plus_1 = 0;  ///< 0: nothing is here
  };
  std::vector<Slot> slots_;
  std::size_t mask_;
};

/// In the order of the rows.
std::vector<Pair> pairs_of(const std::vector<std::uint64_t>& hashes) {
  LastRows seen(hashes.size());
  std::vector<Pair> pairs;
  std::size_t changing = 0;
  std::array<std::uint64_t, kAnchorRows> factors{};
  for (std::size_t i = 0; i < kAnchorRows; ++i) factors[i] = factor_of(kFirstOfAnchor + i);
  for (std::size_t row = 1; row < hashes.size(); ++row) {
    changing = hashes[row] != hashes[row - 1] ? changing + 1 : 0;
    if (changing < kAnchorRows) continue;
    std::uint64_t hash = 0;
    for (std::size_t i = 0; i < kAnchorRows; ++i) hash += factors[i] * hashes[row - i];
    if (const auto earlier = seen.exchange(hash, row)) pairs.push_back({row, *earlier});
  }
  return pairs;
}

struct Replay {
  std::size_t first = 0;
  std::size_t last = 0;
  std::size_t earlier = 0;  ///< row that `first` repeats
};

}  // namespace

std::vector<Suspect> find_replayed_rows(const RowTable& table) {
  const std::size_t rows = table.rows();
  const std::vector<std::uint64_t> hashes = row_hashes(table);
  std::vector<Replay> replays;
  std::size_t done = 0;
  std::size_t looks = 0;
  for (const Pair& pair : pairs_of(hashes)) {
    if (pair.row < done) continue;
    std::size_t first = pair.row;
    std::size_t last = pair.row;
    const std::size_t lag = pair.row - pair.earlier;
    while (first > lag && first > done && hashes[first - 1] == hashes[first - 1 - lag]) --first;
    while (last + 1 < rows && hashes[last + 1] == hashes[last + 1 - lag]) ++last;
    if (last - first + 1 < kFewestReplayedRows || !tells(table, first, last)) {
      if (++looks > kMostLooks * 16) break;
      done = std::max(done, pair.row + 1);
      continue;
    }
    replays.push_back({first, last, first - lag});
    done = last + 1;
  }
  std::vector<Suspect> found;
  for (const RowReadings& channel : table.channels) {
    if (!channel.evaluated) continue;
    for (const Replay& replay : replays) {
      Suspect suspect;
      suspect.channel = channel.channel;
      suspect.code = Suspect::Code::copied;
      suspect.from_s = table.time_s(replay.first);
      suspect.to_s = table.time_s(replay.last);
      const std::size_t length = replay.last - replay.first;
      suspect.evidence = {.kind = SuspectEvidence::Kind::equals_earlier_rows,
                          .count = length + 1,
                          .earlier_from_s = table.time_s(replay.earlier),
                          .earlier_to_s = table.time_s(replay.earlier + length)};
      found.push_back(suspect);
    }
  }
  return found;
}

}  // namespace soakwright
