// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of a table that are taken out of it or stand in another order than the file's.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "core/read/log_table.h"

namespace soakwright {

/// Takes the rows `dropped` (ascending, not empty) out of the `rows` stamps and out of the table's columns.
/// Stamps, lines and counts of the table stay as they are.
void take_cells_out(const std::vector<std::size_t>& dropped, std::int64_t* stamps, std::size_t rows,
                    LogTable& table);

/// The same for a finished table, whose rows, lines and numbers of readings follow.
void take_rows_out(const std::vector<std::size_t>& dropped, LogTable& table);

/// A row, and the row whose stamp, line and cells it gets.
using RowMoves = std::vector<std::pair<std::size_t, std::size_t>>;
/// `moves` ascend by their first row, and their second rows are the same rows in another order.
void reorder_rows(const RowMoves& moves, LogTable& table);

/// Whether all cells of two rows are the same readings, or are missing in both.
bool same_cells(const LogTable& table, std::size_t row, std::size_t other_row);
/// The same of one column.
bool same_cell(const LogTable& table, const LogColumn& column, std::size_t row, std::size_t other_row);

}  // namespace soakwright
