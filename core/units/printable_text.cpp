// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/printable_text.h"

namespace soakwright {
namespace {

bool between(char32_t code_point, char32_t first, char32_t last) {
  return code_point >= first && code_point <= last;
}

bool ends_line(char32_t code_point) {
  return between(code_point, U'\t', U'\r') || code_point == 0x85 || code_point == 0x2028 ||
         code_point == 0x2029;
}

}  // namespace

std::size_t utf8_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  if (text.empty()) return 0;
  const unsigned lead = byte(0);
  if (lead < 0x80U) return 1;
  if (lead >= 0xC2U && lead <= 0xDFU) return continues(1) ? 2 : 0;
  if (lead >= 0xE0U && lead <= 0xEFU) {
    const unsigned lowest = lead == 0xE0U ? 0xA0U : 0x80U;
    const unsigned highest = lead == 0xEDU ? 0x9FU : 0xBFU;
    return byte(1) >= lowest && byte(1) <= highest && continues(2) ? 3 : 0;
  }
  if (lead >= 0xF0U && lead <= 0xF4U) {
    const unsigned lowest = lead == 0xF0U ? 0x90U : 0x80U;
    const unsigned highest = lead == 0xF4U ? 0x8FU : 0xBFU;
    return byte(1) >= lowest && byte(1) <= highest && continues(2) && continues(3) ? 4 : 0;
  }
  return 0;
}

char32_t utf8_code_point(std::string_view text, std::size_t length) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  if (length == 1) return byte(0);
  char32_t code_point = byte(0) & (0x7FU >> length);
  for (std::size_t i = 1; i < length; ++i) code_point = (code_point << 6U) | (byte(i) & 0x3FU);
  return code_point;
}

bool steers_display(char32_t code_point) {
  return code_point < 0x20 || between(code_point, 0x7F, 0x9F) || code_point == 0x061C ||
         between(code_point, 0x200E, 0x200F) || between(code_point, 0x2028, 0x202E) ||
         between(code_point, 0x2066, 0x2069);
}

std::string printable(std::string_view text) {
  std::string clean;
  clean.reserve(text.size());
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const char32_t code_point = length == 0 ? 0 : utf8_code_point(text, length);
    if (length != 0 && ends_line(code_point))
      clean += ' ';
    else if (length == 0 || steers_display(code_point))
      clean += kReplacementCharacter;
    else
      clean += text.substr(0, length);
    text.remove_prefix(length == 0 ? 1 : length);
  }
  return clean;
}

}  // namespace soakwright
