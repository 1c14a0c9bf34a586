// SPDX-License-Identifier: GPL-3.0-or-later
// The value of a PDF object (ISO 32000-1, 7.3), without a stream's bytes.
//
// Only what reports are built from: generation numbers are 0, and numbers keep the text that they were
// written as.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace soakwright::evidence {

using ObjectNumber = std::uint32_t;
/// A number of more digits than these is none that reports have.
inline constexpr std::size_t kMostNumberDigits = 15;

struct PdfValue {
  enum class Kind { null, boolean, number, name, string, array, dictionary, reference };
  Kind kind = Kind::null;
  std::string text;         ///< boolean and number as written; name without its slash; string: its bytes
  ObjectNumber object = 0;  ///< what a reference names
  std::vector<std::string> keys;  ///< of a dictionary, one for each item, in the order of the file
  std::vector<PdfValue> items;    ///< of an array or a dictionary

  [[nodiscard]] bool is(Kind wanted) const { return kind == wanted; }
  [[nodiscard]] bool is_name(std::string_view name) const { return kind == Kind::name && text == name; }
  /// The entry of a dictionary; null where there is none.
  [[nodiscard]] const PdfValue* find(std::string_view key) const;
  /// The number as a whole one. Returns nullopt if it is none, is negative or has more than 15 digits.
  [[nodiscard]] std::optional<std::uint64_t> whole() const;
  /// The number as a double. Returns nullopt if it is no number.
  [[nodiscard]] std::optional<double> real() const;
  /// A text string as UTF-8; one without UTF-16's mark is taken as it is.
  [[nodiscard]] std::string words() const;
  void set(const std::string& key, PdfValue value);
  void remove(std::string_view key);
  /// As it is written into a file; strings in hexadecimal.
  [[nodiscard]] std::string written() const;
  bool operator==(const PdfValue&) const = default;

  static PdfValue of_name(std::string name);
  static PdfValue of_bytes(std::string bytes);
  /// A text string as UTF-16 with its mark (ISO 32000-1, 7.9.2.2); `words` are UTF-8, what is not becomes
  /// U+FFFD.
  static PdfValue of_words(std::string_view words);
  static PdfValue of_whole(std::uint64_t number);
  /// With two digits behind the point.
  static PdfValue of_real(double number);
  static PdfValue of_reference(ObjectNumber object);
  static PdfValue of_array(std::vector<PdfValue> items = {});
  static PdfValue of_dictionary();
};

}  // namespace soakwright::evidence
