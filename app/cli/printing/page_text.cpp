// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/page_text.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "app/cli/printing/table_fit.h"
#include "app/cli/printing/terminal.h"
#include "core/units/printable_text.h"

#ifdef _WIN32
#include <io.h>
#else
#include <unistd.h>
#endif

namespace soakwright::cli {
namespace {

constexpr std::size_t kWidest = 140;
constexpr std::size_t kIndent = 2;
constexpr std::size_t kBetweenColumns = 2;

/// ECMA-48 select graphic rendition.
std::string_view sequence_of(Tint tint) {
  switch (tint) {
    case Tint::none:
      return "";
    case Tint::strong:
      return "\x1b[1m";
    case Tint::faint:
      return "\x1b[2m";
    case Tint::good:
      return "\x1b[32m";
    case Tint::bad:
      return "\x1b[1;31m";
    case Tint::doubtful:
      return "\x1b[33m";
  }
  return "";
}

}  // namespace

Tint tint_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::met:
      return Tint::good;
    case Verdict::inconclusive:
      return Tint::doubtful;
    case Verdict::not_met:
      return Tint::bad;
  }
  return Tint::none;
}

std::size_t display_width(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

bool colour_is_welcome() {
  const char* no_color = std::getenv("NO_COLOR");
  if (no_color != nullptr && *no_color != '\0') return false;
#ifdef _WIN32
  return false;  // a console there may not know the sequences
#else
  const char* terminal = std::getenv("TERM");
  return isatty(STDOUT_FILENO) != 0 && terminal != nullptr && std::string_view(terminal) != "dumb";
#endif
}

PageStyle page_style() {
  if (!output_is_terminal()) return {};
  PageStyle style;
  style.coloured = colour_is_welcome();
  style.width = std::min(terminal_width(), kWidest);
  style.fit_tables = true;
  return style;
}

void PageText::tinted(std::string_view text, Tint tint) {
  const bool shade = style_.coloured && tint != Tint::none && !text.empty();
  if (shade) out_ += sequence_of(tint);
  out_ += printable(text);
  if (shade) out_ += "\x1b[0m";
}

void PageText::blank_line() {
  if (!out_.empty()) out_ += '\n';
}

void PageText::heading(std::string_view text) {
  blank_line();
  line(text, Tint::strong);
}

void PageText::line(std::string_view text, Tint tint) {
  tinted(text, tint);
  out_ += '\n';
}

void PageText::facts(const std::vector<LabelledText>& facts) {
  // A long name has a line of its own: it would push the texts of all others far to the right.
  constexpr std::size_t kLongName = 34;
  const std::size_t longest_name = style_.fit_tables ? std::min(style_.width / 3, kLongName) : kLongName;
  std::size_t widest = 0;
  for (const LabelledText& fact : facts) {
    const std::size_t width = display_width(fact.name);
    if (!fact.text.empty() && width <= longest_name) widest = std::max(widest, width);
  }
  for (const LabelledText& fact : facts) {
    if (fact.text.empty()) continue;
    const std::size_t width = display_width(fact.name);
    if (width > longest_name) {
      line(std::string(kIndent, ' ') + fact.name, Tint::faint);
      paragraph({std::string(std::max<std::size_t>(widest, 1), ' ')}, fact.text);
    } else {
      paragraph({fact.name + std::string(widest - width, ' '), Tint::faint}, fact.text);
    }
  }
}

void PageText::table_row(const Row& row, const std::vector<std::size_t>& widths) {
  std::vector<std::vector<std::string>> wrapped;
  std::size_t lines = 1;
  for (std::size_t column = 0; column < row.size(); ++column) {
    wrapped.push_back(wrapped_cell(row[column].text, widths[column]));
    lines = std::max(lines, wrapped.back().size());
  }
  for (std::size_t line = 0; line < lines; ++line) {
    Row piece;
    for (std::size_t column = 0; column < row.size(); ++column)
      piece.emplace_back(line < wrapped[column].size() ? wrapped[column][line] : std::string{},
                         row[column].tint);
    table_line(piece, widths);
  }
}

void PageText::table_line(const Row& row, const std::vector<std::size_t>& widths) {
  std::size_t owed = kIndent;  // spaces before the next cell: none are left behind the last
  for (std::size_t column = 0; column < row.size(); ++column) {
    if (widths[column] == 0) continue;
    const std::size_t width = display_width(row[column].text);
    if (width > 0) {
      out_.append(owed, ' ');
      tinted(row[column].text, row[column].tint);
      owed = 0;
    }
    owed += widths[column] - width + kBetweenColumns;
  }
  out_ += '\n';
}

void PageText::table(const Row& header, const std::vector<Row>& rows) {
  std::vector<std::size_t> widths(header.size(), 0);
  for (const Row& row : rows) {
    if (row.size() < header.size()) continue;
    for (std::size_t column = 0; column < header.size(); ++column)
      widths[column] = std::max(widths[column], display_width(row[column].text));
  }
  Row names;
  for (std::size_t column = 0; column < header.size(); ++column) {
    if (widths[column] > 0) widths[column] = std::max(widths[column], display_width(header[column].text));
    names.emplace_back(header[column].text, Tint::faint);
  }
  if (style_.fit_tables) {
    std::vector<std::size_t> words(header.size(), 0);
    for (std::size_t column = 0; column < header.size(); ++column) {
      words[column] = longest_word(header[column].text);
      for (const Row& row : rows)
        if (row.size() >= header.size())
          words[column] = std::max(words[column], longest_word(row[column].text));
    }
    fit_widths(widths, words, style_.width - kIndent, kBetweenColumns);
  }
  table_row(names, widths);
  for (const Row& row : rows) {
    if (row.size() < header.size())
      line(std::string(kIndent, ' ') + row.front().text, row.front().tint);
    else
      table_row(row, widths);
  }
}

void PageText::paragraph(const Cell& lead, std::string_view text) {
  out_.append(kIndent, ' ');
  tinted(lead.text, lead.tint);
  const std::size_t margin = kIndent + (lead.text.empty() ? 0 : display_width(lead.text) + kBetweenColumns);
  std::size_t at = margin - (lead.text.empty() ? 0 : kBetweenColumns);
  bool first = true;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find_first_of(" \n", begin), text.size());
    const std::string_view word = text.substr(begin, end - begin);
    begin = end + 1;
    if (word.empty()) continue;
    const std::size_t width = display_width(word);
    if (first) {
      out_.append(margin - at, ' ');
      at = margin;
    } else if (at + 1 + width > style_.width) {
      out_ += '\n';
      out_.append(margin, ' ');
      at = margin;
    } else {
      out_ += ' ';
      ++at;
    }
    tinted(word, Tint::none);
    at += width;
    first = false;
  }
  out_ += '\n';
}

}  // namespace soakwright::cli
