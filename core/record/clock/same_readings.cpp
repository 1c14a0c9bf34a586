// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/same_readings.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace soakwright {
namespace {

// What makes a shift worth trying, and rows that no two runs share by chance.
constexpr std::size_t kRowsCompared = 8;
constexpr std::size_t kScatteredRows = 20;

std::uint64_t mixed(std::uint64_t value) {  // the finalizer of SplitMix64 (S. Vigna), from memory
  value ^= value >> 30U;
  value *= 0xBF58476D1CE4E5B9ULL;
  value ^= value >> 27U;
  value *= 0x94D049BB133111EBULL;
  return value ^ (value >> 31U);
}

/// One number for each row: the same where the channels read the same, in whatever order.
std::vector<std::uint64_t> marks_of(const Record& record) {
  std::vector<std::uint64_t> marks(record.rows(), 0);
  for (const Channel& channel : record.channels)
    for (std::size_t row = 0; row < marks.size(); ++row)
      if (const auto celsius = channel.readings.celsius(row))
        marks[row] += mixed(std::bit_cast<std::uint64_t>(*celsius + 0.0) + 1);
  return marks;
}

/// Rows at which some channel leaves the straight line of the two rows before: noise and corners, which a
/// programme's ramps and levels do not have in common.
std::vector<bool> scattered_rows(const Record& record) {
  std::vector<bool> scattered(record.rows(), false);
  for (const Channel& channel : record.channels)
    for (std::size_t row = 2; row < scattered.size(); ++row) {
      const auto a = channel.readings.celsius(row - 2);
      const auto b = channel.readings.celsius(row - 1);
      const auto c = channel.readings.celsius(row);
      constexpr double kRounding = 1e-9;
      if (a && b && c && std::abs(*c - 2.0 * *b + *a) > kRounding) scattered[row] = true;
    }
  return scattered;
}

/// How many rows `b` must be shifted on to lie on `a`, by the pieces that they share.
std::optional<std::ptrdiff_t> likely_shift(const std::vector<std::uint64_t>& a,
                                           const std::vector<std::uint64_t>& b) {
  if (a.size() < kRowsCompared || b.size() < kRowsCompared) return std::nullopt;
  const auto piece_at = [](const std::vector<std::uint64_t>& marks, std::size_t row) {
    std::uint64_t piece = 0;
    for (std::size_t i = 0; i < kRowsCompared; ++i) piece = mixed(piece + marks[row + i]);
    return piece;
  };
  std::unordered_map<std::uint64_t, std::size_t> places;
  for (std::size_t row = 0; row + kRowsCompared <= a.size(); ++row) places.try_emplace(piece_at(a, row), row);
  std::unordered_map<std::ptrdiff_t, std::size_t> votes;
  for (std::size_t row = 0; row + kRowsCompared <= b.size(); ++row)
    if (const auto place = places.find(piece_at(b, row)); place != places.end())
      ++votes[static_cast<std::ptrdiff_t>(place->second) - static_cast<std::ptrdiff_t>(row)];
  std::optional<std::ptrdiff_t> best;
  std::size_t most = 0;
  for (const auto& [shift, count] : votes)
    if (count > most || (count == most && best && shift < *best)) {
      best = shift;
      most = count;
    }
  return best;
}

}  // namespace

bool same_readings(const Record& a, const Record& b) {
  const std::vector<std::uint64_t> of_a = marks_of(a);
  const std::vector<std::uint64_t> of_b = marks_of(b);
  if (of_a == of_b) return true;
  const auto shift = likely_shift(of_a, of_b);
  if (!shift) return false;
  const std::vector<bool> scattered = scattered_rows(b);
  const auto rows_of_a = static_cast<std::ptrdiff_t>(of_a.size());
  const auto rows_of_b = static_cast<std::ptrdiff_t>(of_b.size());
  const std::ptrdiff_t begin = std::max<std::ptrdiff_t>(0, -*shift);
  const std::ptrdiff_t end = std::min(rows_of_b, rows_of_a - *shift);
  std::ptrdiff_t same = 0;
  std::size_t telling = 0;
  for (std::ptrdiff_t row = begin; row < end; ++row) {
    const auto in_b = static_cast<std::size_t>(row);
    if (of_b[in_b] != of_a[static_cast<std::size_t>(row + *shift)]) continue;
    ++same;
    if (scattered[in_b]) ++telling;
  }
  const std::ptrdiff_t shared = end - begin;
  return 2 * shared >= std::min(rows_of_a, rows_of_b) && 100 * same >= 99 * shared &&
         telling >= kScatteredRows;
}

}  // namespace soakwright
