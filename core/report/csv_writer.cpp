// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/csv_writer.h"

#include <array>
#include <charconv>
#include <cmath>

#include "core/units/printable_text.h"

namespace soakwright {

void CsvWriter::separate() {
  if (!first_) out_ += ',';
  first_ = false;
}

void CsvWriter::text(std::string_view value) {
  separate();
  std::string safe = printable(value);
  if (!safe.empty() && std::string_view("=+-@").find(safe.front()) != std::string_view::npos)
    safe.insert(safe.begin(), '\'');
  quoted(safe);
}

void CsvWriter::exact(std::string_view value) {
  separate();
  quoted(printable(value));
}

void CsvWriter::quoted(const std::string& safe) {
  if (safe.find_first_of(",\"") == std::string::npos) {
    out_ += safe;
    return;
  }
  out_ += '"';
  for (const char c : safe) {
    if (c == '"') out_ += '"';
    out_ += c;
  }
  out_ += '"';
}

void CsvWriter::number(std::optional<double> value) {
  separate();
  if (!value || !std::isfinite(*value)) return;
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), *value).ptr;
  out_.append(digits.data(), end);
}

void CsvWriter::integer(std::uint64_t value) {
  separate();
  out_ += std::to_string(value);
}

void CsvWriter::nothing() { separate(); }

void CsvWriter::end_line() {
  out_ += '\n';
  first_ = true;
}

}  // namespace soakwright
