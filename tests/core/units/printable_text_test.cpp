// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/printable_text.h"

#include <string>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

const std::string kReplaced = "\xEF\xBF\xBD";  // U+FFFD

std::string utf8_of(char32_t c) {
  if (c < 0x80) return {static_cast<char>(c)};
  if (c < 0x800) return {static_cast<char>(0xC0 | (c >> 6U)), static_cast<char>(0x80 | (c & 0x3FU))};
  return {static_cast<char>(0xE0 | (c >> 12U)), static_cast<char>(0x80 | ((c >> 6U) & 0x3FU)),
          static_cast<char>(0x80 | (c & 0x3FU))};
}

}  // namespace

TEST_CASE("text that steers nothing comes out as it went in") {
  for (const char* text :
       {"", "TC1 inside, 90\xC2\xB0",
        "\xC5\x81\xC3\xB3"
        "d\xC5\xBA",
        "\xE6\x97\xA5\xE6\x9C\xAC", "\xCE\xA9", "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D", "\xF0\x9F\x94\xA5",
        "a\xC2\xA0"
        "b",
        "\xE2\x80\x8D"})
    CHECK(printable(text) == text);
}

TEST_CASE("every character that steers a terminal or the direction of writing is replaced") {
  // ECMA-48 (C0, C1), and the explicit formatting characters of Unicode Standard Annex #9, table 1.
  for (char32_t c = 0; c < 0x3000; ++c) {
    const bool line_end = (c >= 0x09 && c <= 0x0D) || c == 0x85 || c == 0x2028 || c == 0x2029;
    const bool steers = c < 0x20 || (c >= 0x7F && c <= 0x9F) || c == 0x061C || c == 0x200E || c == 0x200F ||
                        (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
    const std::string expected = line_end ? " " : steers ? kReplaced : utf8_of(c);
    if (printable(utf8_of(c)) != expected) FAIL_CHECK("U+" << std::hex << static_cast<unsigned>(c));
  }
}

TEST_CASE("attacks on a terminal come out as harmless text on one line") {
  const std::pair<std::string, std::string> rows[] = {
      {"TC1\x1b[31m", "TC1" + kReplaced + "[31m"},
      {"\x1b]0;title\x07", kReplaced + "]0;title" + kReplaced},
      {"a\nsoakwright: ok", "a soakwright: ok"},
      {"a\r\nb\tc", "a  b c"},
      {"\xC2\x9B"
       "2J",
       kReplaced + "2J"},
      {"\xE2\x80\xAE"
       "EVIL",
       kReplaced + "EVIL"},
  };
  for (const auto& [text, expected] : rows) CHECK(printable(text) == expected);
}

TEST_CASE("bytes that are no UTF-8 are replaced, one by one") {
  // Rows of the Unicode Standard, table 3-7, and what is beside them.
  const std::pair<std::string, std::string> rows[] = {
      {"caf\xE9.pdf", "caf" + kReplaced + ".pdf"},
      {"\x9B", kReplaced},
      {"\xC0\x80", kReplaced + kReplaced},
      {"\xED\xA0\x80", kReplaced + kReplaced + kReplaced},
      {"\xF4\x90\x80\x80", kReplaced + kReplaced + kReplaced + kReplaced},
      {"\xE2\x82", kReplaced + kReplaced},
      {std::string("a\0b", 3), "a" + kReplaced + "b"},
  };
  for (const auto& [text, expected] : rows) CHECK(printable(text) == expected);
}
