// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/cell_split.h"

namespace soakwright {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t'; }

/// The quoted cell that begins at line[at] == '"'; leaves `at` behind the closing quote.
std::string_view take_quoted(std::string_view line, std::size_t& at) {
  const std::size_t first = ++at;
  while (at < line.size()) {
    if (line[at] != '"') {
      ++at;
    } else if (at + 1 < line.size() && line[at + 1] == '"') {
      at += 2;
    } else {
      break;
    }
  }
  const std::string_view cell = line.substr(first, at - first);
  if (at < line.size()) ++at;
  return cell;
}

void split_at_spaces(std::string_view line, std::vector<std::string_view>& cells) {
  std::size_t at = 0;
  for (;;) {
    while (at < line.size() && is_blank(line[at])) ++at;
    if (at == line.size()) return;
    if (line[at] == '"') {
      cells.push_back(take_quoted(line, at));
      continue;
    }
    const std::size_t first = at;
    while (at < line.size() && !is_blank(line[at])) ++at;
    cells.push_back(line.substr(first, at - first));
  }
}

}  // namespace

void split_cells(std::string_view line, char delimiter, std::vector<std::string_view>& cells) {
  cells.clear();
  if (delimiter == ' ') return split_at_spaces(line, cells);
  std::size_t at = 0;
  for (;;) {
    std::size_t first = at;
    while (first < line.size() && is_blank(line[first]) && line[first] != delimiter) ++first;
    if (first < line.size() && line[first] == '"') {
      at = first;
      const std::string_view cell = take_quoted(line, at);
      // Only spaces may follow up to the delimiter; anything else is text that merely begins with a quote.
      std::size_t end = at;
      while (end < line.size() && line[end] != delimiter && is_blank(line[end])) ++end;
      if (end == line.size() || line[end] == delimiter) {
        cells.push_back(cell);
        at = end;
      } else {
        at = line.find(delimiter, at);
        if (at == std::string_view::npos) at = line.size();
        cells.push_back(line.substr(first, at - first));
      }
    } else {
      first = at;
      at = line.find(delimiter, at);
      if (at == std::string_view::npos) at = line.size();
      cells.push_back(line.substr(first, at - first));
    }
    if (at == line.size()) return;
    ++at;
  }
}

std::string unquoted(std::string_view cell) {
  std::string out;
  out.reserve(cell.size());
  for (std::size_t i = 0; i < cell.size(); ++i) {
    out += cell[i];
    if (cell[i] == '"' && i + 1 < cell.size() && cell[i + 1] == '"') ++i;
  }
  return out;
}

}  // namespace soakwright
