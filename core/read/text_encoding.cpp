// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/text_encoding.h"

#include <array>
#include <cstdint>
#include <cstring>

namespace soakwright {
namespace {

// Windows-1252 between 0x80 and 0x9F (Unicode mapping table CP1252.TXT); 0 where nothing is assigned.
constexpr std::array<std::uint16_t, 32> kWindows1252{
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

void append_code_point(std::uint32_t code, std::string& out) {
  const auto put = [&out](std::uint32_t byte) { out += static_cast<char>(static_cast<unsigned char>(byte)); };
  if (code < 0x80) {
    put(code);
  } else if (code < 0x800) {
    put(0xC0 | (code >> 6));
    put(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    put(0xE0 | (code >> 12));
    put(0x80 | ((code >> 6) & 0x3F));
    put(0x80 | (code & 0x3F));
  } else {
    put(0xF0 | (code >> 18));
    put(0x80 | ((code >> 12) & 0x3F));
    put(0x80 | ((code >> 6) & 0x3F));
    put(0x80 | (code & 0x3F));
  }
}

unsigned byte_at(std::string_view text, std::size_t at) { return static_cast<unsigned char>(text[at]); }

/// Bytes of the valid UTF-8 sequence at `at`; 0 where it is none.
std::size_t sequence_length(std::string_view text, std::size_t at) {
  const unsigned lead = byte_at(text, at);
  if (lead < 0x80) return 1;
  std::size_t length = 0;
  std::uint32_t code = 0;
  if (lead >= 0xC2 && lead <= 0xDF) {
    length = 2;
    code = lead & 0x1F;
  } else if (lead >= 0xE0 && lead <= 0xEF) {
    length = 3;
    code = lead & 0x0F;
  } else if (lead >= 0xF0 && lead <= 0xF4) {
    length = 4;
    code = lead & 0x07;
  } else {
    return 0;
  }
  if (at + length > text.size()) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    const unsigned next = byte_at(text, at + i);
    if ((next & 0xC0) != 0x80) return 0;
    code = (code << 6) | (next & 0x3F);
  }
  if (length == 3 && (code < 0x800 || (code >= 0xD800 && code <= 0xDFFF))) return 0;
  if (length == 4 && (code < 0x10000 || code > 0x10FFFF)) return 0;
  return length;
}

/// UTF-16 without its mark: Latin text has a zero in every other byte.
std::optional<TextEncoding> utf16_by_zeros(std::string_view head) {
  std::size_t even = 0;
  std::size_t odd = 0;
  const std::size_t pairs = head.size() / 2;
  for (std::size_t i = 0; i < pairs; ++i) {
    if (head[2 * i] == '\0') ++even;
    if (head[2 * i + 1] == '\0') ++odd;
  }
  if (pairs < 8) return std::nullopt;
  if (odd * 10 >= pairs * 9 && even * 20 <= pairs) return TextEncoding::utf_16_le;
  if (even * 10 >= pairs * 9 && odd * 20 <= pairs) return TextEncoding::utf_16_be;
  return std::nullopt;
}

/// Bytes that no text has: NUL and control characters other than tab, line ends, form feed, escape and end of
/// file.
bool looks_binary(std::string_view head) {
  std::size_t zeros = 0;
  std::size_t controls = 0;
  for (const char c : head) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte == 0) ++zeros;
    if (byte < 0x20 && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != '\v' && c != '\x1B' &&
        c != '\x1A')
      ++controls;
  }
  // A few control characters are damage, not a binary file; many are.
  return zeros * 50 > head.size() || controls * 20 > head.size();
}

}  // namespace

std::optional<DetectedEncoding> byte_order_mark(std::string_view head) {
  if (head.substr(0, 3) == "\xEF\xBB\xBF") return DetectedEncoding{TextEncoding::utf_8, 3};
  if (head.substr(0, 2) == "\xFF\xFE") return DetectedEncoding{TextEncoding::utf_16_le, 2};
  if (head.substr(0, 2) == "\xFE\xFF") return DetectedEncoding{TextEncoding::utf_16_be, 2};
  return std::nullopt;
}

std::optional<DetectedEncoding> detect_encoding(std::string_view head) {
  if (const auto mark = byte_order_mark(head)) return mark;
  if (const auto wide = utf16_by_zeros(head)) return DetectedEncoding{*wide, 0};
  if (looks_binary(head)) return std::nullopt;
  // The last sequence may be cut by the end of `head`.
  std::size_t end = head.size();
  for (std::size_t back = 0; back < 3 && end > 0 && (byte_at(head, end - 1) & 0xC0) == 0x80; ++back) --end;
  if (end > 0 && byte_at(head, end - 1) >= 0xC0) --end;
  const bool utf8 = is_valid_utf8(head) || is_valid_utf8(head.substr(0, end));
  return DetectedEncoding{utf8 ? TextEncoding::utf_8 : TextEncoding::windows_1252, 0};
}

std::size_t first_not_utf8(std::string_view text) {
  constexpr std::uint64_t kHighBits = 0x8080808080808080U;
  std::size_t at = 0;
  while (at < text.size()) {
    // A log is ASCII nearly throughout: eight bytes at a time.
    for (std::uint64_t eight = 0; at + sizeof eight <= text.size(); at += sizeof eight) {
      std::memcpy(&eight, text.data() + at, sizeof eight);
      if ((eight & kHighBits) != 0) break;
    }
    if (at == text.size()) break;
    const std::size_t length = sequence_length(text, at);
    if (length == 0) return at;
    at += length;
  }
  return std::string_view::npos;
}

bool is_valid_utf8(std::string_view text) { return first_not_utf8(text) == std::string_view::npos; }

std::string to_utf8(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  const bool valid = is_valid_utf8(text);
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte == 0)
      append_code_point(0xFFFD, out);  // a NUL would end the text for half of its readers
    else if (valid || byte < 0x80)
      out += c;
    else if (byte >= 0xA0)
      append_code_point(byte, out);
    else
      append_code_point(kWindows1252[byte - 0x80U] != 0 ? kWindows1252[byte - 0x80U] : 0xFFFDU, out);
  }
  return out;
}

void append_utf16(std::string_view bytes, bool big_endian, unsigned& high, std::string& out) {
  for (std::size_t at = 0; at + 1 < bytes.size(); at += 2) {
    const unsigned unit = big_endian ? (byte_at(bytes, at) << 8) | byte_at(bytes, at + 1)
                                     : (byte_at(bytes, at + 1) << 8) | byte_at(bytes, at);
    if (high != 0) {
      if (unit >= 0xDC00 && unit <= 0xDFFF) {
        append_code_point(0x10000 + ((high - 0xD800) << 10) + (unit - 0xDC00), out);
        high = 0;
        continue;
      }
      append_code_point(0xFFFD, out);
      high = 0;
    }
    if (unit >= 0xD800 && unit <= 0xDBFF)
      high = unit;
    else
      append_code_point(unit >= 0xDC00 && unit <= 0xDFFF ? 0xFFFD : unit, out);
  }
}

}  // namespace soakwright
