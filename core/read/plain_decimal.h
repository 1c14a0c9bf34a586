// The fast reading of plain decimals: eight bytes at a time, no branch on their length.
//
// The cell is loaded so that its last character is the word's last byte. In a column with a known number of
// places the point then always stands at the same byte; one XOR turns digits into 0..9 and the point into 0,
// one addition shows whether any byte is something else, and two multiplications weigh the digits, the point
// with weight 0. Anything else (signs, blanks, other places, more than eight characters) is left to the
// careful reading.
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

  /// `places` from 0 to kMostPlaces.
  static constexpr int kMostPlaces = 6;
  static DecimalShape of(int places, char decimal);
};

namespace plain_decimal {
inline constexpr std::uint64_t kTopBits = 0x8080808080808080U;
inline constexpr std::uint32_t kLongest = 8;
}  // namespace plain_decimal

inline DecimalShape DecimalShape::of(int places, char decimal) {
  DecimalShape shape;
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

}  // namespace soakwright
