// SPDX-License-Identifier: GPL-3.0-or-later
// Reads the syntax of PDF objects (ISO 32000-1, 7.2 and 7.3) from bytes that may be damaged: it never reads
// past the end, and values nest no deeper than kDeepest.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "app/evidence/pdf_value.h"

namespace soakwright::evidence {

class PdfSyntax {
 public:
  static constexpr int kDeepest = 32;

  PdfSyntax(std::string_view bytes, std::size_t at) : bytes_(bytes), at_(at) {}

  [[nodiscard]] std::size_t at() const { return at_; }
  /// The next value. Returns nullopt if there is none, or none that is well formed.
  std::optional<PdfValue> value() { return value_at(0); }
  /// Takes the word if it comes next.
  bool word(std::string_view expected);
  /// A whole number of at most 15 digits.
  std::optional<std::uint64_t> whole();
  void skip_space();

 private:
  std::optional<PdfValue> value_at(int depth);
  std::optional<PdfValue> name();
  std::optional<PdfValue> literal_string();
  std::optional<PdfValue> hexadecimal_string();
  std::optional<PdfValue> array(int depth);
  std::optional<PdfValue> dictionary(int depth);
  std::optional<PdfValue> number_or_reference();
  [[nodiscard]] char here() const { return at_ < bytes_.size() ? bytes_[at_] : '\0'; }
  [[nodiscard]] bool ended() const { return at_ >= bytes_.size(); }

  std::string_view bytes_;
  std::size_t at_;
};

}  // namespace soakwright::evidence
