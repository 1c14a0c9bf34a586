// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/json_writer.h"

#include <array>
#include <charconv>
#include <cmath>

#include "core/units/printable_text.h"

namespace soakwright {
namespace {

/// What steers a terminal is escaped, so that the result can be looked at with anything.
void append_escaped(std::string& out, std::string_view sequence) {
  constexpr std::string_view digits = "0123456789abcdef";
  switch (sequence.front()) {
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
  const char32_t code = utf8_code_point(sequence, sequence.size());
  if (!steers_display(code)) {
    out += sequence;
    return;
  }
  out += "\\u";
  for (const unsigned shift : {12U, 8U, 4U, 0U}) out += digits[(code >> shift) & 0x0FU];
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
    const std::size_t length = utf8_length(value);
    if (length == 0)
      out_ += kReplacementCharacter;
    else
      append_escaped(out_, value.substr(0, length));
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
