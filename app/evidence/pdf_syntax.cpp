// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/pdf_syntax.h"

#include <limits>
#include <utility>

namespace soakwright::evidence {
namespace {

bool is_space(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0'; }

bool is_delimiter(char c) { return std::string_view("()<>[]{}/%").find(c) != std::string_view::npos; }

bool is_regular(char c) { return !is_space(c) && !is_delimiter(c); }

bool is_digit(char c) { return c >= '0' && c <= '9'; }

int digit_of(char c) {
  if (is_digit(c)) return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

char escaped(char c) {
  switch (c) {
    case 'n':
      return '\n';
    case 'r':
      return '\r';
    case 't':
      return '\t';
    case 'b':
      return '\b';
    case 'f':
      return '\f';
    default:
      return c;
  }
}

}  // namespace

void PdfSyntax::skip_space() {
  while (!ended()) {
    if (is_space(here())) {
      ++at_;
    } else if (here() == '%') {
      while (!ended() && here() != '\n' && here() != '\r') ++at_;
    } else {
      return;
    }
  }
}

bool PdfSyntax::word(std::string_view expected) {
  skip_space();
  if (bytes_.substr(std::min(at_, bytes_.size()), expected.size()) != expected) return false;
  const std::size_t end = at_ + expected.size();
  if (end < bytes_.size() && is_regular(bytes_[end])) return false;
  at_ = end;
  return true;
}

std::optional<std::uint64_t> PdfSyntax::whole() {
  skip_space();
  std::uint64_t number = 0;
  const std::size_t begin = at_;
  while (!ended() && is_digit(here()) && at_ - begin < kMostNumberDigits)
    number = 10 * number + static_cast<std::uint64_t>(bytes_[at_++] - '0');
  if (at_ == begin || (!ended() && is_regular(here()))) return std::nullopt;
  return number;
}

std::optional<PdfValue> PdfSyntax::value_at(int depth) {
  if (depth > kDeepest) return std::nullopt;
  skip_space();
  if (ended()) return std::nullopt;
  switch (here()) {
    case '/':
      return name();
    case '(':
      return literal_string();
    case '[':
      return array(depth);
    case '<':
      return at_ + 1 < bytes_.size() && bytes_[at_ + 1] == '<' ? dictionary(depth) : hexadecimal_string();
    default:
      break;
  }
  if (is_digit(here()) || here() == '-' || here() == '+' || here() == '.') return number_or_reference();
  PdfValue value;
  if (word("null")) return value;
  for (const char* boolean : {"true", "false"})
    if (word(boolean)) {
      value.kind = PdfValue::Kind::boolean;
      value.text = boolean;
      return value;
    }
  return std::nullopt;
}

std::optional<PdfValue> PdfSyntax::name() {
  ++at_;
  std::string text;
  while (!ended() && is_regular(here())) {
    char c = bytes_[at_++];
    if (c == '#') {
      if (at_ + 1 >= bytes_.size()) return std::nullopt;
      const int high = digit_of(bytes_[at_]);
      const int low = digit_of(bytes_[at_ + 1]);
      if (high < 0 || low < 0) return std::nullopt;
      c = static_cast<char>(16 * high + low);
      at_ += 2;
    }
    text += c;
  }
  return PdfValue::of_name(std::move(text));
}

std::optional<PdfValue> PdfSyntax::literal_string() {
  ++at_;
  std::string text;
  int open = 1;
  while (!ended()) {
    const char c = bytes_[at_++];
    if (c == '\\') {
      if (ended()) return std::nullopt;
      if (is_digit(here())) {
        int code = 0;
        for (int i = 0; i < 3 && here() >= '0' && here() <= '7'; ++i) code = 8 * code + (bytes_[at_++] - '0');
        text += static_cast<char>(code & 0xFF);
      } else {
        text += escaped(bytes_[at_++]);
      }
      continue;
    }
    if (c == '(') ++open;
    if (c == ')' && --open == 0) return PdfValue::of_bytes(std::move(text));
    text += c;
  }
  return std::nullopt;
}

std::optional<PdfValue> PdfSyntax::hexadecimal_string() {
  ++at_;
  std::string text;
  int high = -1;
  while (!ended()) {
    const char c = bytes_[at_++];
    if (c == '>') {
      if (high >= 0) text += static_cast<char>(16 * high);
      return PdfValue::of_bytes(std::move(text));
    }
    if (is_space(c)) continue;
    const int digit = digit_of(c);
    if (digit < 0) return std::nullopt;
    if (high < 0) {
      high = digit;
    } else {
      text += static_cast<char>(16 * high + digit);
      high = -1;
    }
  }
  return std::nullopt;
}

std::optional<PdfValue> PdfSyntax::array(int depth) {
  ++at_;
  PdfValue value = PdfValue::of_array();
  for (;;) {
    skip_space();
    if (ended()) return std::nullopt;
    if (here() == ']') {
      ++at_;
      return value;
    }
    auto item = value_at(depth + 1);
    if (!item) return std::nullopt;
    value.items.push_back(std::move(*item));
  }
}

std::optional<PdfValue> PdfSyntax::dictionary(int depth) {
  at_ += 2;
  PdfValue value = PdfValue::of_dictionary();
  for (;;) {
    skip_space();
    if (ended()) return std::nullopt;
    if (here() == '>') {
      if (at_ + 1 >= bytes_.size() || bytes_[at_ + 1] != '>') return std::nullopt;
      at_ += 2;
      return value;
    }
    if (here() != '/') return std::nullopt;
    auto key = name();
    auto item = value_at(depth + 1);
    // A key that is there twice has no one meaning.
    if (!key || !item || value.find(key->text) != nullptr) return std::nullopt;
    value.keys.push_back(std::move(key->text));
    value.items.push_back(std::move(*item));
  }
}

std::optional<PdfValue> PdfSyntax::number_or_reference() {
  const std::size_t begin = at_;
  bool whole_number = is_digit(here());
  ++at_;
  while (!ended() && (is_digit(here()) || here() == '.')) {
    if (here() == '.') whole_number = false;
    ++at_;
  }
  if (!ended() && is_regular(here())) return std::nullopt;
  const std::size_t end = at_;
  PdfValue value;
  value.kind = PdfValue::Kind::number;
  value.text = std::string(bytes_.substr(begin, end - begin));
  if (!whole_number) return value;
  const auto object = value.whole();
  if (whole() == std::optional<std::uint64_t>{0} && word("R") && object &&
      *object <= std::numeric_limits<ObjectNumber>::max())
    return PdfValue::of_reference(static_cast<ObjectNumber>(*object));
  at_ = end;
  return value;
}

}  // namespace soakwright::evidence
