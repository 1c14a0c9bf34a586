// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/repeated_header.h"

#include <algorithm>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/text_encoding.h"
#include "core/read/unit_name.h"

namespace soakwright {
namespace {

std::vector<std::string> plain_cells(std::string_view line, char delimiter) {
  std::vector<std::string_view> cells;
  split_cells(line, delimiter, cells);
  std::vector<std::string> plain;
  plain.reserve(cells.size());
  for (const std::string_view cell : cells) plain.push_back(lower_case(without_spaces(cell)));
  while (!plain.empty() && plain.back().empty()) plain.pop_back();
  return plain;
}

bool are_units(const std::vector<std::string>& cells) {
  std::size_t units = 0;
  std::size_t filled = 0;
  for (const std::string& cell : cells) {
    if (cell.empty()) continue;
    ++filled;
    if (unit_of(to_utf8(cell))) ++units;
  }
  return units > 1 && units == filled;
}

}  // namespace

RepeatedHeader::RepeatedHeader(std::string_view header, std::string_view units, char delimiter,
                               std::size_t time_cell)
    : header_(plain_cells(header, delimiter)), units_(plain_cells(units, delimiter)), time_cell_(time_cell) {}

HeaderRepeat RepeatedHeader::kind_of(std::string_view line, char delimiter) const {
  if (header_.empty() && units_.empty()) return HeaderRepeat::none;
  const std::vector<std::string> cells = plain_cells(line, delimiter);
  if (cells.size() < 2) return HeaderRepeat::none;
  if (cells == header_) return HeaderRepeat::same_header;
  if (cells == units_) return HeaderRepeat::same_units;
  // The same name over the time and other names beside it.
  const bool time_named =
      time_cell_ < cells.size() && time_cell_ < header_.size() && !header_[time_cell_].empty();
  if (time_named && cells[time_cell_] == header_[time_cell_]) return HeaderRepeat::other_header;
  if (!units_.empty() && cells.size() == units_.size() && are_units(cells)) return HeaderRepeat::other_header;
  return HeaderRepeat::none;
}

}  // namespace soakwright
