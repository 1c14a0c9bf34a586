// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/cell.h"

#include <array>
#include <cmath>

#include <fast_float/fast_float.h>

namespace soakwright {
namespace {

constexpr int kMostPlaces = 18;
constexpr std::int64_t kLargestBeforeDigit = 99'999'999'999'999'999;  // one more digit still fits 64 bits
constexpr std::int64_t kExactInDouble = std::int64_t{1} << 53;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

constexpr std::array<std::int64_t, kMostPlaces + 1> kPowersOfTen = [] {
  std::array<std::int64_t, kMostPlaces + 1> powers{};
  std::int64_t power = 1;
  for (auto& entry : powers) {
    entry = power;
    if (power <= INT64_MAX / 10) power *= 10;
  }
  return powers;
}();

/// How many bytes of `text` from `at` are one grouping mark: ' ', '\'', '.', ',' or a narrow or no-break
/// space.
std::size_t grouping_mark(std::string_view text, std::size_t at, char decimal) {
  const char c = text[at];
  if ((c == ' ' || c == '\'' || c == '.' || c == ',') && c != decimal) return 1;
  if (c == '\xA0') return 1;
  if (text.substr(at, 2) == "\xC2\xA0") return 2;
  if (text.substr(at, 3) == "\xE2\x80\xAF" || text.substr(at, 3) == "\xE2\x80\x99") return 3;
  return 0;
}

/// 1,234 or 12 345.6: up to three digits, then groups of three with one kind of mark, then perhaps decimals.
bool is_grouped(std::string_view text, char decimal) {
  std::size_t at = 0;
  if (!text.empty() && (text[0] == '+' || text[0] == '-')) ++at;
  std::size_t lead = 0;
  while (at < text.size() && is_digit(text[at])) {
    ++at;
    ++lead;
  }
  if (lead == 0 || lead > 3 || at == text.size()) return false;
  const std::size_t mark_bytes = grouping_mark(text, at, decimal);
  if (mark_bytes == 0) return false;
  const std::string_view mark = text.substr(at, mark_bytes);
  std::size_t groups = 0;
  while (text.substr(at, mark_bytes) == mark && at + mark_bytes + 3 <= text.size()) {
    for (std::size_t i = 0; i < 3; ++i)
      if (!is_digit(text[at + mark_bytes + i])) return false;
    at += mark_bytes + 3;
    ++groups;
  }
  if (groups == 0) return false;
  if (at < text.size() && text[at] == decimal) {
    ++at;
    while (at < text.size() && is_digit(text[at])) ++at;
  }
  return at == text.size();
}

/// Lets the exponent move the point. False where the decimal is then too long to keep.
bool shift_point(std::int64_t& mantissa, int& places, long exponent) {
  const long moved = places - exponent;
  if (mantissa == 0) {
    places = moved > 0 && moved <= kMostPlaces ? static_cast<int>(moved) : 0;
    return true;
  }
  if (moved > kMostPlaces) return false;
  if (moved >= 0) {
    places = static_cast<int>(moved);
    return true;
  }
  if (-moved > kMostPlaces) return false;
  const std::int64_t power = power_of_ten(static_cast<int>(-moved));
  if (std::abs(mantissa) > INT64_MAX / power) return false;
  mantissa *= power;
  places = 0;
  return true;
}

}  // namespace

std::int64_t power_of_ten(int places) { return kPowersOfTen[static_cast<std::size_t>(places)]; }

std::string_view without_spaces(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\xA0'; };
  for (;;) {
    if (!text.empty() && blank(text.front()))
      text.remove_prefix(1);
    else if (text.substr(0, 2) == "\xC2\xA0")
      text.remove_prefix(2);
    else
      break;
  }
  for (;;) {
    if (text.size() >= 2 && text.substr(text.size() - 2) == "\xC2\xA0")
      text.remove_suffix(2);
    else if (!text.empty() && blank(text.back()) &&
             !(text.back() == '\xA0' && text.size() >= 2 && (text[text.size() - 2] & 0x80)))
      text.remove_suffix(1);
    else
      break;
  }
  return text;
}

Cell parse_cell(std::string_view text, char decimal) {
  Cell cell;
  text = without_spaces(text);
  if (text.empty()) return cell;
  cell.kind = Cell::Kind::text;

  std::size_t at = 0;
  bool negative = false;
  if (text[0] == '+' || text[0] == '-') {
    negative = text[0] == '-';
    at = 1;
  } else if (text.substr(0, 3) == "\xE2\x88\x92") {  // the minus sign of typesetting
    negative = true;
    at = 3;
  }
  const std::size_t first_digit = at;
  std::int64_t mantissa = 0;
  int places = 0;
  std::size_t digits = 0;
  bool fits = true;
  bool after_point = false;
  for (; at < text.size(); ++at) {
    const char c = text[at];
    if (is_digit(c)) {
      ++digits;
      if (after_point) ++places;
      if (mantissa > kLargestBeforeDigit)
        fits = false;
      else
        mantissa = mantissa * 10 + (c - '0');
    } else if (c == decimal && !after_point) {
      after_point = true;
    } else {
      break;
    }
  }
  long exponent = 0;
  if (digits != 0 && at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    std::size_t sign = at + 1;
    const bool down = sign < text.size() && text[sign] == '-';
    if (sign < text.size() && (text[sign] == '-' || text[sign] == '+')) ++sign;
    std::size_t end = sign;
    for (; end < text.size() && is_digit(text[end]); ++end)
      if (exponent < 10'000) exponent = exponent * 10 + (text[end] - '0');
    if (end > sign) {
      at = end;
      if (down) exponent = -exponent;
    }
  }
  if (digits == 0 || at != text.size()) {
    if (is_grouped(text, decimal)) cell.kind = Cell::Kind::grouped;
    return cell;
  }
  cell.kind = Cell::Kind::number;
  cell.exact = fits && places <= kMostPlaces && shift_point(mantissa, places, exponent);
  cell.places = places;
  if (cell.exact) cell.mantissa = negative ? -mantissa : mantissa;
  if (cell.exact && mantissa < kExactInDouble) {
    // Both fit a double, powers of ten up to 22 are exact: one rounding.
    cell.value = static_cast<double>(cell.mantissa) / static_cast<double>(power_of_ten(places));
    return cell;
  }
  double magnitude = 0.0;
  const fast_float::parse_options options{fast_float::chars_format::general, decimal};
  const auto parsed = fast_float::from_chars_advanced(text.data() + first_digit, text.data() + text.size(),
                                                      magnitude, options);
  if (parsed.ec != std::errc{} || !std::isfinite(magnitude)) {
    cell.kind = Cell::Kind::text;
    cell.exact = false;
    return cell;
  }
  if (cell.places > kMostPlaces) cell.places = kMostPlaces;
  cell.value = negative ? -magnitude : magnitude;
  return cell;
}

}  // namespace soakwright
