// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/first_columns.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/dialect_detection.h"
#include "core/read/header_detection.h"
#include "core/read/log_head.h"
#include "core/read/unit_name.h"

namespace soakwright {
namespace {

using Cells = std::vector<std::string_view>;

LogHead head_of(const std::vector<std::string>& lines) {
  LogHead head;
  head.atomic_file = true;
  for (const std::string& line : lines) head.lines.emplace_back(line);
  return head;
}

/// Without the empty cell that a delimiter at the line's end makes.
std::size_t width_of(std::string_view line, char delimiter, Cells& cells) {
  split_cells(line, delimiter, cells);
  while (!cells.empty() && without_spaces(cells.back()).empty()) cells.pop_back();
  return cells.size();
}

/// Spaces stand in every sentence: they part cells only where nothing else does.
char likely_delimiter(const LogHead& head) {
  char likely = ' ';
  std::size_t most = head.lines.size();
  Cells cells;
  for (const char delimiter : {',', ';', '\t', '|'}) {
    std::size_t all = 0;
    for (const std::string_view line : head.lines)
      all += std::max<std::size_t>(1, width_of(line, delimiter, cells));
    if (all <= most) continue;
    most = all;
    likely = delimiter;
  }
  return likely;
}

}  // namespace

std::vector<std::string> first_columns(const std::vector<std::string>& lines, std::optional<char> delimiter,
                                       std::optional<std::size_t> header_line) {
  const LogHead head = head_of(lines);
  if (header_line && *header_line > head.lines.size()) header_line.reset();
  GivenSettings given;
  given.delimiter = delimiter;
  given.header_line = header_line;
  std::size_t from = header_line && *header_line != 0 ? *header_line - 1 : 0;
  std::vector<std::string> names;
  const auto dialect = detect_dialect(head, given, {});
  if (dialect) {
    delimiter = dialect.value().delimiter.value;
    const auto header = detect_header(head, dialect.value(), header_line, {});
    if (header) {
      const TableHeader& table = header.value();
      from = table.header_line != 0 ? table.header_line - 1 : table.first_row;
      for (const ColumnHeading& column : table.columns) names.push_back(column.named ? column.name : "");
    }
  }
  if (!delimiter) delimiter = likely_delimiter(head);
  Cells cells;
  if (names.empty() && header_line && *header_line != 0) {
    split_cells(head.lines[*header_line - 1], *delimiter, cells);
    for (const std::string_view cell : cells)
      names.push_back(name_and_unit(std::string{without_spaces(unquoted(cell))}).name);
  }
  std::size_t widest = names.size();
  for (std::size_t line = from; line < head.lines.size(); ++line)
    widest = std::max(widest, width_of(head.lines[line], *delimiter, cells));
  names.resize(widest);
  return names;
}

}  // namespace soakwright
