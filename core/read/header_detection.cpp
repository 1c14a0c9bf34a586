// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/header_detection.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/table_problems.h"
#include "core/read/text_encoding.h"
#include "core/read/unit_name.h"

namespace soakwright {
namespace {

using Cells = std::vector<std::string_view>;

/// Number and time are one look here: what matters is what is not text.
bool holds_value(CellLook look) {
  return look != CellLook::text && look != CellLook::empty && look != CellLook::no_value;
}

/// The first line that has the rows' shape: as many cells, and a value in the first column in which rows have
/// one.
///
/// `from`: the first line that may be a row.
std::size_t first_row_of(const LogHead& head, const Dialect& dialect, std::size_t from) {
  std::vector<std::size_t> values(dialect.cells, 0);
  Cells cells;
  for (const std::size_t row : dialect.rows) {
    split_cells(head.lines[row], dialect.delimiter.value, cells);
    for (std::size_t c = 0; c < dialect.cells; ++c)
      if (holds_value(look_of(cells[c], dialect.decimal.value))) ++values[c];
  }
  std::size_t lead = 0;
  while (lead < dialect.cells && values[lead] * 2 <= dialect.rows.size()) ++lead;
  if (lead == dialect.cells) return dialect.rows.front();
  // A row with a cell too many is a row all the same.
  const auto leads = [&](std::size_t line) {
    split_cells(head.lines[line], dialect.delimiter.value, cells);
    return cells.size() >= dialect.cells && holds_value(look_of(cells[lead], dialect.decimal.value));
  };
  for (std::size_t row : dialect.rows) {
    if (!leads(row)) continue;
    // Rows in which nothing but the time is filled in yet are rows all the same.
    while (row > from && leads(row - 1)) --row;
    return row;
  }
  return dialect.rows.front();
}

/// The nearest line with something on it before `line`.
std::optional<std::size_t> line_before(const LogHead& head, std::size_t line) {
  while (line > 0)
    if (!without_spaces(head.lines[--line]).empty()) return line;
  return std::nullopt;
}

/// Header cells of a line, as many as a row has; nullopt if they do not fit.
std::optional<Cells> header_cells(std::string_view line, const Dialect& dialect, bool blank_at_end) {
  Cells cells;
  const std::string_view text = without_spaces(line);
  if (!text.empty() && text.front() == '#') line.remove_prefix(line.find('#') + 1);
  split_cells(line, dialect.delimiter.value, cells);
  const std::size_t wanted = dialect.cells;
  while (cells.size() > wanted && without_spaces(cells.back()).empty()) cells.pop_back();
  if (cells.size() + 1 == wanted && blank_at_end) cells.emplace_back();
  if (cells.size() != wanted && dialect.delimiter.value == ' ') {
    // Names with single spaces in them stand apart by two or more.
    Cells wide;
    std::size_t at = 0;
    while (at < line.size()) {
      at = line.find_first_not_of(" \t", at);
      if (at == std::string_view::npos) break;
      std::size_t end = at;
      while (end < line.size() && line[end] != '\t' && line.substr(end, 2) != "  ") ++end;
      wide.push_back(line.substr(at, end - at));
      at = end;
    }
    cells = std::move(wide);
    // A date and a time under one name.
    if (cells.size() + 1 == wanted) cells.insert(cells.begin() + 1, std::string_view{});
  }
  if (cells.size() != wanted) return std::nullopt;
  return cells;
}

/// Mostly units, and nothing that is clearly a name of a column that already has one.
bool is_units_row(const Cells& cells) {
  std::size_t units = 0;
  std::size_t others = 0;
  for (const std::string_view cell : cells) {
    if (without_spaces(cell).empty()) continue;
    if (unit_of(to_utf8(cell)))
      ++units;
    else
      ++others;
  }
  return units > 0 && units >= others;
}

/// Units and nothing else: with no names above, the columns have none.
bool are_all_units(const Cells& cells) {
  std::size_t units = 0;
  for (const std::string_view cell : cells) {
    if (without_spaces(cell).empty()) continue;
    if (!unit_of(to_utf8(cell))) return false;
    ++units;
  }
  return units > 1;
}

bool is_header_row(const Cells& cells, char decimal) {
  std::size_t words = 0;
  std::size_t filled = 0;
  for (const std::string_view cell : cells) {
    const CellLook look = look_of(cell, decimal);
    if (look == CellLook::empty) continue;
    ++filled;
    if (look == CellLook::text || look == CellLook::no_value) ++words;
  }
  // Columns named by number have one word, that of the time column.
  return words > 0 && (filled > 1 || cells.size() == 1);
}

std::string whole_text(std::string_view cell) { return to_utf8(without_spaces(unquoted(cell))); }

ColumnHeading heading_of(std::string_view name_cell, std::string_view unit_cell, std::size_t number) {
  ColumnHeading heading;
  heading.header = whole_text(name_cell);
  NameAndUnit parts = name_and_unit(heading.header);
  // A unit where a name should stand; a letter alone is a name as often.
  if (const auto unit = unit_of(parts.name, false); parts.unit.empty() && unit && measures_temperature(*unit))
    std::swap(parts.name, parts.unit);
  heading.named = !parts.name.empty();
  heading.name = heading.named ? std::move(parts.name) : std::to_string(number);
  heading.unit = std::move(parts.unit);
  std::string unit = whole_text(unit_cell);
  if (!unit.empty()) {
    if (unit.size() > 2 &&
        ((unit.front() == '(' && unit.back() == ')') || (unit.front() == '[' && unit.back() == ']')))
      unit = unit.substr(1, unit.size() - 2);
    heading.unit = std::move(unit);
  }
  return heading;
}

/// A row has more cells than the header has names because its decimal commas part them.
bool commas_part_numbers(const LogHead& head, const Dialect& dialect, std::size_t names) {
  if (dialect.delimiter.value != ',' || names < 2 || dialect.cells <= names) return false;
  // Time cells are whole, every other name covers two.
  for (std::size_t time_cells = 0; time_cells < 3 && time_cells < names; ++time_cells) {
    if (dialect.cells != time_cells + 2 * (names - time_cells)) continue;
    Cells cells;
    split_cells(head.lines[dialect.rows.front()], ',', cells);
    for (std::size_t c = time_cells; c < cells.size(); ++c)
      if (cells[c].find('.') != std::string_view::npos) return false;
    return true;
  }
  return false;
}

/// Names and units as they stand, and where.
struct NameLines {
  std::optional<Cells> names, units;
  std::size_t header_line = 0, units_line = 0;  ///< from 1
};

Result<NameLines> found_lines(const LogHead& head, const Dialect& dialect, std::size_t first_row,
                              bool blank_at_end, const std::string& path) {
  NameLines lines;
  const auto last = line_before(head, first_row);
  if (!last) return lines;
  std::optional<Cells> last_cells = header_cells(head.lines[*last], dialect, blank_at_end);
  if (!last_cells) {
    Cells found;
    split_cells(head.lines[*last], dialect.delimiter.value, found);
    if (commas_part_numbers(head, dialect, found.size()))
      return table_problems::commas_part_numbers(path, first_row + 1, dialect.cells, found.size());
    return lines;
  }
  const auto before = line_before(head, *last);
  std::optional<Cells> before_cells =
      before ? header_cells(head.lines[*before], dialect, blank_at_end) : std::nullopt;
  if (is_units_row(*last_cells) && before_cells && is_header_row(*before_cells, dialect.decimal.value)) {
    lines.names = std::move(before_cells);
    lines.units = std::move(last_cells);
    lines.header_line = *before + 1;
    lines.units_line = *last + 1;
  } else if (are_all_units(*last_cells)) {
    lines.units = std::move(last_cells);
    lines.units_line = *last + 1;
  } else if (is_header_row(*last_cells, dialect.decimal.value)) {
    lines.names = std::move(last_cells);
    lines.header_line = *last + 1;
  }
  return lines;
}

/// A line that a person named; what stands between it and the rows may be the units.
Result<NameLines> given_lines(const LogHead& head, const Dialect& dialect, std::size_t given,
                              std::size_t first_row, bool blank_at_end, const std::string& path) {
  NameLines lines;
  const auto last = line_before(head, first_row);
  if (given == 0) {
    auto units = last ? header_cells(head.lines[*last], dialect, blank_at_end) : std::nullopt;
    if (units && are_all_units(*units)) {
      lines.units = std::move(units);
      lines.units_line = *last + 1;
    }
    return lines;
  }
  if (given > head.lines.size()) return table_problems::names_behind_rows(path, given, first_row + 1);
  lines.names = header_cells(head.lines[given - 1], dialect, blank_at_end);
  if (!lines.names) {
    Cells found;
    split_cells(head.lines[given - 1], dialect.delimiter.value, found);
    return table_problems::names_do_not_fit(path, given, found.size(), dialect.cells);
  }
  if (!is_header_row(*lines.names, dialect.decimal.value))
    return table_problems::values_in_place_of_names(path, given);
  lines.header_line = given;
  if (last && *last + 1 > given) {
    auto units = header_cells(head.lines[*last], dialect, blank_at_end);
    if (units && is_units_row(*units)) {
      lines.units = std::move(units);
      lines.units_line = *last + 1;
    }
  }
  return lines;
}

}  // namespace

Result<TableHeader> detect_header(const LogHead& head, const Dialect& dialect,
                                  std::optional<std::size_t> given_line, const std::string& path) {
  TableHeader table;
  table.first_row = first_row_of(head, dialect, given_line.value_or(0));

  Cells first_cells;
  split_cells(head.lines[table.first_row], dialect.delimiter.value, first_cells);
  const bool blank_at_end = without_spaces(first_cells.back()).empty();

  auto found = given_line ? given_lines(head, dialect, *given_line, table.first_row, blank_at_end, path)
                          : found_lines(head, dialect, table.first_row, blank_at_end, path);
  if (!found) return found.problems();
  const auto& [names, units, header_line, units_line] = found.value();
  table.header_line = header_line;
  table.units_line = units_line;
  const std::size_t table_line = table.header_line != 0 ? table.header_line : table.units_line;
  const std::size_t heading_end = table_line != 0 ? table_line - 1 : table.first_row;
  for (std::size_t i = 0; i < heading_end; ++i)
    if (!without_spaces(head.lines[i]).empty()) table.heading.push_back(to_utf8(head.lines[i]));

  for (std::size_t c = 0; c < dialect.cells; ++c)
    table.columns.push_back(heading_of(names ? (*names)[c] : std::string_view{},
                                       units ? (*units)[c] : std::string_view{}, c + 1));
  return table;
}

}  // namespace soakwright
