// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/pdf_value.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace soakwright::evidence {
namespace {

void append_hex(std::string& out, unsigned char byte) {
  constexpr char kDigits[] = "0123456789abcdef";
  out += kDigits[byte >> 4U];
  out += kDigits[byte & 15U];
}

std::string written_name(const std::string& name) {
  std::string out = "/";
  for (const char c : name) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       c == '.' || c == '-' || c == '_' || c == '+' || c == ':';
    if (plain) {
      out += c;
    } else {
      out += '#';
      append_hex(out, static_cast<unsigned char>(c));
    }
  }
  return out;
}

std::string written_string(const std::string& bytes) {
  std::string out = "<";
  out.reserve(2 * bytes.size() + 2);
  for (const char c : bytes) append_hex(out, static_cast<unsigned char>(c));
  return out + '>';
}

/// The code point at `at`, which moves behind it; U+FFFD for a byte that begins none.
char32_t next_code_point(std::string_view utf8, std::size_t& at) {
  constexpr char32_t kReplacement = 0xFFFD;
  const auto first = static_cast<unsigned char>(utf8[at++]);
  if (first < 0x80) return first;
  const int more = first >= 0xF0 && first < 0xF5 ? 3 : first >= 0xE0 ? 2 : first >= 0xC2 ? 1 : 0;
  if (more == 0 || first >= 0xF5) return kReplacement;
  char32_t point = first & (0x3FU >> static_cast<unsigned>(more));
  std::size_t end = at;
  for (int i = 0; i < more; ++i, ++end) {
    if (end >= utf8.size() || (static_cast<unsigned char>(utf8[end]) & 0xC0U) != 0x80) return kReplacement;
    point = (point << 6U) | (static_cast<unsigned char>(utf8[end]) & 0x3FU);
  }
  constexpr std::array<char32_t, 4> kLeast{0, 0x80, 0x800, 0x10000};
  const bool surrogate = point >= 0xD800 && point < 0xE000;
  if (point < kLeast[static_cast<std::size_t>(more)] || surrogate || point > 0x10FFFF) return kReplacement;
  at = end;
  return point;
}

void append_utf8(std::string& out, char32_t point) {
  const auto more = [&out, point](unsigned shift) {
    out += static_cast<char>(0x80U | ((point >> shift) & 0x3FU));
  };
  if (point < 0x80) {
    out += static_cast<char>(point);
  } else if (point < 0x800) {
    out += static_cast<char>(0xC0U | (point >> 6U));
    more(0);
  } else if (point < 0x10000) {
    out += static_cast<char>(0xE0U | (point >> 12U));
    more(6);
    more(0);
  } else {
    out += static_cast<char>(0xF0U | (point >> 18U));
    more(12);
    more(6);
    more(0);
  }
}

PdfValue of_kind(PdfValue::Kind kind, std::string text = {}) {
  PdfValue value;
  value.kind = kind;
  value.text = std::move(text);
  return value;
}

}  // namespace

const PdfValue* PdfValue::find(std::string_view key) const {
  if (kind != Kind::dictionary) return nullptr;
  for (std::size_t i = 0; i < keys.size(); ++i)
    if (keys[i] == key) return &items[i];
  return nullptr;
}

std::optional<std::uint64_t> PdfValue::whole() const {
  if (kind != Kind::number || text.empty() || text.size() > kMostNumberDigits) return std::nullopt;
  std::uint64_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return number;
}

std::optional<double> PdfValue::real() const {
  if (kind != Kind::number) return std::nullopt;
  double number = 0.0;
  const char* begin = text.data() + (text.starts_with('+') ? 1 : 0);
  const auto [end, error] = std::from_chars(begin, text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(number)) return std::nullopt;
  return number;
}

std::string PdfValue::words() const {
  if (!text.starts_with("\xFE\xFF")) return text;
  std::string utf8;
  const auto unit_at = [this](std::size_t at) {
    return static_cast<char32_t>((static_cast<unsigned char>(text[at]) << 8U) |
                                 static_cast<unsigned char>(text[at + 1]));
  };
  for (std::size_t at = 2; at + 1 < text.size(); at += 2) {
    char32_t point = unit_at(at);
    if (point >= 0xD800 && point < 0xDC00 && at + 3 < text.size() && unit_at(at + 2) >= 0xDC00 &&
        unit_at(at + 2) < 0xE000) {
      point = 0x10000 + ((point - 0xD800) << 10U) + (unit_at(at + 2) - 0xDC00);
      at += 2;
    } else if (point >= 0xD800 && point < 0xE000) {
      point = 0xFFFD;
    }
    append_utf8(utf8, point);
  }
  return utf8;
}

void PdfValue::set(const std::string& key, PdfValue value) {
  kind = Kind::dictionary;
  for (std::size_t i = 0; i < keys.size(); ++i)
    if (keys[i] == key) {
      items[i] = std::move(value);
      return;
    }
  keys.push_back(key);
  items.push_back(std::move(value));
}

void PdfValue::remove(std::string_view key) {
  for (std::size_t i = 0; i < keys.size(); ++i)
    if (keys[i] == key) {
      keys.erase(keys.begin() + static_cast<std::ptrdiff_t>(i));
      items.erase(items.begin() + static_cast<std::ptrdiff_t>(i));
      return;
    }
}

std::string PdfValue::written() const {
  std::string out;
  switch (kind) {
    case Kind::null:
      return "null";
    case Kind::boolean:
    case Kind::number:
      return text;
    case Kind::name:
      return written_name(text);
    case Kind::string:
      return written_string(text);
    case Kind::reference:
      return std::to_string(object) + " 0 R";
    case Kind::array:
      out = "[";
      for (const PdfValue& item : items) out.append(out.size() > 1 ? " " : "").append(item.written());
      return out + ']';
    case Kind::dictionary:
      out = "<<";
      for (std::size_t i = 0; i < keys.size(); ++i)
        out += ' ' + written_name(keys[i]) + ' ' + items[i].written();
      return out + " >>";
  }
  return out;
}

PdfValue PdfValue::of_name(std::string name) { return of_kind(Kind::name, std::move(name)); }
PdfValue PdfValue::of_bytes(std::string bytes) { return of_kind(Kind::string, std::move(bytes)); }

PdfValue PdfValue::of_words(std::string_view words) {
  std::string utf16 = "\xFE\xFF";
  const auto append = [&utf16](char32_t unit) {
    utf16 += static_cast<char>(static_cast<unsigned char>(unit >> 8U));
    utf16 += static_cast<char>(static_cast<unsigned char>(unit & 0xFFU));
  };
  for (std::size_t at = 0; at < words.size();) {
    const char32_t point = next_code_point(words, at);
    if (point < 0x10000) {
      append(point);
    } else {
      append(0xD800 + ((point - 0x10000) >> 10U));
      append(0xDC00 + ((point - 0x10000) & 0x3FFU));
    }
  }
  return of_kind(Kind::string, std::move(utf16));
}

PdfValue PdfValue::of_whole(std::uint64_t number) { return of_kind(Kind::number, std::to_string(number)); }

PdfValue PdfValue::of_real(double number) {
  std::array<char, 64> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), number, std::chars_format::fixed, 2);
  return of_kind(Kind::number, std::string(text.data(), end.ptr));
}

PdfValue PdfValue::of_reference(ObjectNumber object) {
  PdfValue value = of_kind(Kind::reference);
  value.object = object;
  return value;
}

PdfValue PdfValue::of_array(std::vector<PdfValue> items) {
  PdfValue value = of_kind(Kind::array);
  value.items = std::move(items);
  return value;
}

PdfValue PdfValue::of_dictionary() { return of_kind(Kind::dictionary); }

}  // namespace soakwright::evidence
