#include "core/report/json_writer.h"

#include <array>
#include <charconv>
#include <cmath>

namespace soakwright {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD

/// Length of the valid UTF-8 sequence that `text` starts with, 0 where it starts with none (RFC 3629: no
/// overlong forms, no surrogates, nothing above U+10FFFF).
std::size_t valid_sequence(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
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

void append_escaped(std::string& out, char c) {
  constexpr std::string_view digits = "0123456789abcdef";
  switch (c) {
    case '"':
      out += "\\\"";
      return;
    case '\\':
      out += "\\\\";
      return;
    case '\n':
      out += "\\n";
      return;
    case '\r':
      out += "\\r";
      return;
    case '\t':
      out += "\\t";
      return;
    default:
      break;
  }
  const auto code = static_cast<unsigned char>(c);
  if (code < 0x20U || code == 0x7FU) {
    out += "\\u00";
    out += digits[code >> 4U];
    out += digits[code & 0x0FU];
  } else {
    out += c;
  }
}

}  // namespace

void JsonWriter::separate() {
  if (levels_.empty()) return;
  Level& level = levels_.back();
  if (!level.empty) out_ += level.layout == Layout::line ? ", " : ",";
  level.empty = false;
  if (level.layout == Layout::lines) {
    out_ += '\n';
    out_.append(2 * levels_.size(), ' ');
  }
}

void JsonWriter::before_value() {
  if (after_key_)
    after_key_ = false;
  else
    separate();
}

void JsonWriter::begin(char bracket, Layout layout) {
  before_value();
  out_ += bracket;
  levels_.push_back({layout});
}

void JsonWriter::end(char bracket) {
  const Level level = levels_.back();
  levels_.pop_back();
  if (level.layout == Layout::lines && !level.empty) {
    out_ += '\n';
    out_.append(2 * levels_.size(), ' ');
  }
  out_ += bracket;
}

void JsonWriter::key(std::string_view name) {
  separate();
  quoted(name);
  out_ += ": ";
  after_key_ = true;
}

void JsonWriter::quoted(std::string_view value) {
  out_ += '"';
  while (!value.empty()) {
    const std::size_t length = valid_sequence(value);
    if (length == 0)
      out_ += kReplacement;
    else if (length == 1)
      append_escaped(out_, value.front());
    else
      out_ += value.substr(0, length);
    value.remove_prefix(length == 0 ? 1 : length);
  }
  out_ += '"';
}

void JsonWriter::text(std::string_view value) {
  before_value();
  quoted(value);
}

void JsonWriter::number(double value) {
  if (!std::isfinite(value)) {
    null();
    return;
  }
  before_value();
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  out_.append(digits.data(), end);
}

void JsonWriter::integer(std::uint64_t value) {
  before_value();
  out_ += std::to_string(value);
}

void JsonWriter::boolean(bool value) {
  before_value();
  out_ += value ? "true" : "false";
}

void JsonWriter::null() {
  before_value();
  out_ += "null";
}

}  // namespace soakwright
