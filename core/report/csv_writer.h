// SPDX-License-Identifier: GPL-3.0-or-later
// Writes a table as comma-separated values (RFC 4180, with LF at the line ends), UTF-8.
//
// A text that a spreadsheet would take for a formula gets an apostrophe before it; numbers are the shortest
// text that reads back to the same double.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

class CsvWriter {
 public:
  /// Made safe to show (printable_text.h).
  void text(std::string_view value);
  /// The same, but never changed for a spreadsheet: for moments, which may begin with a sign.
  void exact(std::string_view value);
  /// Empty where there is none.
  void number(std::optional<double> value);
  void integer(std::uint64_t value);
  void nothing();
  void end_line();

  [[nodiscard]] const std::string& str() const { return out_; }

 private:
  void separate();
  void quoted(const std::string& safe);

  std::string out_;
  bool first_ = true;
};

}  // namespace soakwright
