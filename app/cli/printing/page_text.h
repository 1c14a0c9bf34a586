// SPDX-License-Identifier: GPL-3.0-or-later
// Text for a terminal: headings, facts, tables in columns, sentences that wrap. Colour only where it was
// asked for.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.h"

namespace soakwright::cli {

enum class Tint { none, strong, faint, good, bad, doubtful };

/// The tint that a verdict has everywhere on the terminal.
Tint tint_of(Verdict verdict);

struct Cell {
  Cell(std::string words, Tint shade = Tint::none)
      : text(std::move(words)), tint(shade) {}  // NOLINT: implicit
  Cell(const char* words) : text(words) {}      // NOLINT: implicit
  std::string text;
  Tint tint = Tint::none;
};

using Row = std::vector<Cell>;

struct PageStyle {
  bool coloured = false;
  std::size_t width = 100;  ///< of sentences that wrap
  bool fit_tables = false;  ///< tables are no wider either: their cells wrap
};

/// On a terminal as wide as that, and coloured where it is welcome; elsewhere each row of a table stays on
/// one line, for programs that look at lines.
PageStyle page_style();

class PageText {
 public:
  explicit PageText(const PageStyle& style) : style_(style) {}

  void blank_line();
  void heading(std::string_view text);
  void line(std::string_view text, Tint tint = Tint::none);
  /// Names in one column, texts in the next; what is empty is left out.
  void facts(const std::vector<LabelledText>& facts);
  /// Columns as wide as they must be. A row of one cell spans them all. Columns with nothing in them are left
  /// out.
  void table(const Row& header, const std::vector<Row>& rows);
  /// `lead`, then `text` wrapped beside it.
  void paragraph(const Cell& lead, std::string_view text);

  [[nodiscard]] const std::string& str() const { return out_; }

 private:
  void tinted(std::string_view text, Tint tint);
  void table_row(const Row& row, const std::vector<std::size_t>& widths);
  void table_line(const Row& row, const std::vector<std::size_t>& widths);

  PageStyle style_;
  std::string out_;
};

/// Places that `text` (UTF-8) takes on a terminal, one for each code point.
std::size_t display_width(std::string_view text);

/// True where standard output is a terminal and the user has not set NO_COLOR (no-color.org).
bool colour_is_welcome();

}  // namespace soakwright::cli
