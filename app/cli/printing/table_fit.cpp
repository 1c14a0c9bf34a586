// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/table_fit.h"

#include <algorithm>

#include "app/cli/printing/page_text.h"

namespace soakwright::cli {
namespace {

constexpr std::size_t kNarrowest = 8;

/// Bytes of the first `places` code points.
std::size_t bytes_of_places(std::string_view text, std::size_t places) {
  std::size_t at = 0;
  while (at < text.size()) {
    const bool begins = (static_cast<unsigned char>(text[at]) & 0xC0U) != 0x80U;
    if (begins && places-- == 0) break;
    ++at;
  }
  return at;
}

}  // namespace

void fit_widths(std::vector<std::size_t>& widths, const std::vector<std::size_t>& longest_words,
                std::size_t room, std::size_t between) {
  std::size_t total = 0;
  for (const std::size_t width : widths) total += width == 0 ? 0 : width + between;
  total -= std::min(total, between);
  for (const bool into_words : {false, true}) {
    while (total > room) {
      std::size_t widest = 0;  // of those that may become narrower
      std::size_t column = widths.size();
      for (std::size_t i = 0; i < widths.size(); ++i) {
        const std::size_t least = into_words ? kNarrowest : std::max(kNarrowest, longest_words[i]);
        if (widths[i] <= least || widths[i] <= widest) continue;
        widest = widths[i];
        column = i;
      }
      if (column == widths.size()) break;
      --widths[column];
      --total;
    }
  }
}

std::size_t longest_word(std::string_view text) {
  const std::size_t indent = std::min(text.find_first_not_of(' '), text.size());
  text.remove_prefix(indent);
  std::size_t longest = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    longest = std::max(longest, display_width(text.substr(0, end)));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return longest == 0 ? 0 : indent + longest;
}

std::vector<std::string> wrapped_cell(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  if (width == 0 || display_width(text) <= width) return {std::string(text)};
  const std::size_t indent = std::min(text.find_first_not_of(' '), width - 1);
  std::string line(text.substr(0, indent));
  text.remove_prefix(indent);
  bool empty = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (!empty && display_width(line) + 1 + display_width(word) > width) {
      lines.push_back(std::move(line));
      line.assign(indent, ' ');
      empty = true;
    }
    if (!empty) line += ' ';
    while (display_width(line) + display_width(word) > width) {
      const std::size_t bytes = bytes_of_places(word, width - display_width(line));
      line += word.substr(0, bytes);
      word.remove_prefix(bytes);
      lines.push_back(std::move(line));
      line.assign(indent, ' ');
    }
    line += word;
    empty = false;
  }
  lines.push_back(std::move(line));
  return lines;
}

}  // namespace soakwright::cli
