// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/table_rows.h"

#include <algorithm>
#include <cmath>

namespace soakwright {
namespace {

bool is_missing(const LogTable& table, const LogColumn& column, std::size_t row) {
  if (!column.wide.empty()) return std::isnan(column.wide[row]);
  return table.store->at(column.store_column, row) == ColumnStore::kMissing;
}

/// Gives the rows the values of others, all at once.
template <typename At>
void reorder(const RowMoves& moves, At at) {
  std::vector<std::decay_t<decltype(at(0))>> values;
  values.reserve(moves.size());
  for (const auto& [row, from] : moves) values.push_back(at(from));
  for (std::size_t i = 0; i < moves.size(); ++i) at(moves[i].first) = values[i];
}

}  // namespace

void take_cells_out(const std::vector<std::size_t>& dropped, std::int64_t* stamps, std::size_t rows,
                    LogTable& table) {
  std::vector<bool> stored(table.columns.size());
  for (std::size_t i = 0; i < table.columns.size(); ++i) stored[i] = table.columns[i].wide.empty();
  std::size_t to = dropped.front();
  std::size_t next = 0;
  for (std::size_t from = to; from < rows; ++from) {
    if (next < dropped.size() && dropped[next] == from) {
      ++next;
      continue;
    }
    stamps[to] = stamps[from];
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      LogColumn& column = table.columns[i];
      if (stored[i])
        table.store->at(column.store_column, to) = table.store->at(column.store_column, from);
      else
        column.wide[to] = column.wide[from];
    }
    ++to;
  }
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    if (!stored[i]) table.columns[i].wide.resize(to);
}

void take_rows_out(const std::vector<std::size_t>& dropped, LogTable& table) {
  for (LogColumn& column : table.columns)
    for (const std::size_t row : dropped)
      if (!is_missing(table, column, row)) --column.numbers;
  const std::size_t rows = table.rows();
  take_cells_out(dropped, table.stamps_ns.data(), rows, table);
  table.stamps_ns.resize(rows - dropped.size());
  table.lines = table.lines.without(dropped);
}

void reorder_rows(const RowMoves& moves, LogTable& table) {
  reorder(moves, [&](std::size_t row) -> std::int64_t& { return table.stamps_ns[row]; });
  for (LogColumn& column : table.columns) {
    if (column.wide.empty())
      reorder(moves,
              [&](std::size_t row) -> std::int32_t& { return table.store->at(column.store_column, row); });
    else
      reorder(moves, [&](std::size_t row) -> double& { return column.wide[row]; });
  }
  table.lines = table.lines.reordered(moves);
}

bool same_cell(const LogTable& table, const LogColumn& column, std::size_t row, std::size_t other_row) {
  if (column.wide.empty())
    return table.store->at(column.store_column, row) == table.store->at(column.store_column, other_row);
  const double a = column.wide[row];
  const double b = column.wide[other_row];
  return a == b || (std::isnan(a) && std::isnan(b));
}

bool same_cells(const LogTable& table, std::size_t row, std::size_t other_row) {
  return std::all_of(table.columns.begin(), table.columns.end(),
                     [&](const LogColumn& column) { return same_cell(table, column, row, other_row); });
}

}  // namespace soakwright
