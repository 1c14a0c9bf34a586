// SPDX-License-Identifier: GPL-3.0-or-later
// The fast reading of plain decimals: eight bytes at a time, no branch on their length.
//
// The cell is loaded so that its last character is the word's last byte. In a column with a known number of
// places the point then always stands at the same byte; one XOR turns digits into 0..9 and the point into 0,
// one addition shows whether any byte is something else, and two multiplications weigh the digits, the point
// with weight 0. Cells with fewer places, as spreadsheets cut zeros off, and signs take a second, slightly
// longer way. Anything else (spaces, more places, more than eight characters) is left to the careful reading.
#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>

namespace soakwright {

struct DecimalShape {
  std::uint64_t zeros = 0;   ///< '0' where a digit belongs, the decimal sign where that belongs
  std::uint64_t bounds = 0;  ///< added to a byte, sets its top bit if it is too large
  std::uint64_t even_weights = 0;
  std::uint64_t odd_weights = 0;
  std::uint32_t shortest = 1;  ///< characters
  // The same weights for pairs of 16 bits: the first two pairs' sum counts `high_weight` times.
  std::uint64_t pair_weights = 0;
  std::uint32_t high_weight = 0;
  int places = 0;
  char decimal = '.';

  /// `places` from 0 to kMostPlaces.
  static constexpr int kMostPlaces = 6;
  static DecimalShape of(int places, char decimal);
};

namespace plain_decimal {
inline constexpr std::uint64_t kTopBits = 0x8080808080808080U;
inline constexpr std::uint32_t kLongest = 8;
inline constexpr std::array<std::int64_t, 7> kPowers{1, 10, 100, 1000, 10'000, 100'000, 1'000'000};

/// `byte` eight times.
constexpr std::uint64_t repeated(unsigned char byte) { return 0x0101010101010101U * byte; }

/// The last `count` bytes of a word, from 1 to 8.
constexpr std::uint64_t last_bytes(std::uint32_t count) {
  return ~std::uint64_t{0} << ((kLongest - count) * 8);
}

/// The number that eight digits make, the first of them in the lowest byte, each from 0 to 9.
constexpr std::uint64_t number_of(std::uint64_t digits) {
  digits = (digits * 10 + (digits >> 8)) & 0x00FF00FF00FF00FFU;
  digits = (digits * 100 + (digits >> 16)) & 0x0000FFFF0000FFFFU;
  return (digits * 10'000 + (digits >> 32)) & 0xFFFFFFFFU;
}
}  // namespace plain_decimal

inline DecimalShape DecimalShape::of(int places, char decimal) {
  DecimalShape shape;
  shape.places = places;
  shape.decimal = decimal;
  std::array<std::uint64_t, 8> weights{};
  std::uint64_t weight = 1;
  for (int byte = 7; byte >= 0; --byte) {
    const bool point = places > 0 && byte == 7 - places;
    const unsigned shift = static_cast<unsigned>(byte) * 8;
    shape.zeros |= std::uint64_t{static_cast<unsigned char>(point ? decimal : '0')} << shift;
    shape.bounds |= std::uint64_t{point ? 0x7FU : 0x76U} << shift;
    if (point) continue;
    weights[static_cast<std::size_t>(byte)] = weight;
    weight *= 10;
  }
  // Two neighbouring bytes a, b first become 10 a + b; the pair's weight is b's, or a tenth of a's where b is
  // the point.
  std::array<std::uint64_t, 4> pairs{};
  for (std::size_t i = 0; i < 4; ++i)
    pairs[i] = weights[2 * i + 1] != 0 ? weights[2 * i + 1] : weights[2 * i] / 10;
  shape.even_weights = (pairs[0] << 32) + pairs[2];
  shape.odd_weights = (pairs[1] << 32) + pairs[3];
  shape.high_weight = static_cast<std::uint32_t>(pairs[1]);
  shape.pair_weights = (pairs[0] / pairs[1]) | (std::uint64_t{1} << 16) | (pairs[2] << 32) | (pairs[3] << 48);
  shape.shortest = places > 0 ? static_cast<std::uint32_t>(places) + 1 : 1;
  return shape;
}

/// The cell text[begin, end) in units of its last place; false where it is no plain decimal of this shape.
/// Eight bytes before `end` must be readable.
inline bool parse_plain_decimal(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                std::uint32_t end, std::int32_t& units) {
  static_assert(std::endian::native == std::endian::little);
  const std::uint32_t length = end - begin;
  std::uint64_t word = 0;
  std::memcpy(&word, text + static_cast<std::ptrdiff_t>(end) - 8, sizeof word);
  const std::uint64_t inside = ~std::uint64_t{0} << (((plain_decimal::kLongest - length) * 8) & 63U);
  const std::uint64_t digits = (word ^ shape.zeros) & inside;
  const std::uint64_t wrong = ((digits + shape.bounds) | digits) & plain_decimal::kTopBits;
  if (wrong != 0 || length - shape.shortest > plain_decimal::kLongest - shape.shortest) [[unlikely]]
    return false;
  const std::uint64_t pairs = (digits * 10 + (digits >> 8)) & 0x00FF00FF00FF00FFU;
  const std::uint64_t even = pairs & 0x000000FF000000FFU;
  const std::uint64_t odd = (pairs >> 16) & 0x000000FF000000FFU;
  units = static_cast<std::int32_t>((even * shape.even_weights + odd * shape.odd_weights) >> 32);
  return true;
}

/// The same for a cell with a sign, or with fewer places than the shape, or none.
inline bool parse_shorter_decimal(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                  std::uint32_t end, std::int32_t& units) {
  using namespace plain_decimal;
  if (begin == end) return false;
  const bool negative = text[begin] == '-';
  if (negative || text[begin] == '+') ++begin;
  const std::uint32_t length = end - begin;
  if (length - 1 > kLongest - 1) return false;
  std::uint64_t word = 0;
  std::memcpy(&word, text + static_cast<std::ptrdiff_t>(end) - 8, sizeof word);
  const std::uint64_t inside = last_bytes(length);
  // The first byte that is the decimal sign: its lowest bit, or 0.
  const std::uint64_t unlike = (word ^ repeated(static_cast<unsigned char>(shape.decimal))) | ~inside;
  const std::uint64_t signs = (unlike - repeated(1)) & ~unlike & kTopBits;
  const std::uint64_t point = (signs & (~signs + 1)) >> 7;
  const std::uint32_t points = point != 0 ? 1 : 0;
  if (length == points) return false;
  // The digits before the point move up by one byte and close the hole; without a point all stay.
  const std::uint64_t before = point - 1;
  const std::uint64_t joined = ((word & before) << (8 * points)) | (word & ~(before | (point * 0xFF)));
  const std::uint64_t digits = (joined ^ repeated('0')) & last_bytes(length - points);
  const std::uint64_t wrong = ((digits + repeated(0x76)) | digits) & kTopBits;
  const int places = points != 0 ? 7 - std::countr_zero(point) / 8 : 0;
  if (wrong != 0 || places > shape.places) return false;
  const std::int64_t value =
      static_cast<std::int64_t>(number_of(digits)) * kPowers[static_cast<std::size_t>(shape.places - places)];
  if (value > INT32_MAX) return false;
  units = static_cast<std::int32_t>(negative ? -value : value);
  return true;
}

/// The ends of a group of cells, of which `here` are there: where they do not fill the lanes, `room`, in
/// which empty cells stand behind the last.
template <std::size_t kLanes>
inline const std::uint32_t* ends_of_lanes(const std::uint32_t* ends, std::size_t here,
                                          std::uint32_t (&room)[kLanes]) {
  if (here == kLanes) return ends;
  for (std::size_t lane = 0; lane < kLanes; ++lane)
    room[lane] = lane < here ? ends[lane] : room[lane - 1] + 1;
  return room;
}

/// What a group of lanes could not read: tries each lane of `bad` alone, else makes it INT32_MIN and puts its
/// cell into `left`. Lane 0 is cell `first`. Gives how many are left then.
inline std::size_t parse_bad_lanes(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                   const std::uint32_t* ends, std::size_t first, unsigned bad,
                                   std::int32_t* lanes, std::uint32_t* left, std::size_t left_count) {
  for (; bad != 0; bad &= bad - 1) {
    const auto lane = static_cast<std::size_t>(std::countr_zero(bad));
    const std::size_t cell = first + lane;
    const std::uint32_t from = cell == 0 ? begin : ends[cell - 1] + 1;
    // Letters begin words.
    if (text[from] < 'A' && parse_shorter_decimal(shape, text, from, ends[cell], lanes[lane])) continue;
    lanes[lane] = INT32_MIN;
    left[left_count++] = static_cast<std::uint32_t>(cell);
  }
  return left_count;
}

}  // namespace soakwright
