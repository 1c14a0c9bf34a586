// SPDX-License-Identifier: GPL-3.0-or-later
// The numbers of one block on their way into the store: places, what does not fit, what is missing.
//
// A column's places only ever grow. Within a block all its decimals have the same; blocks are brought to the
// same places at the end (table_assembly.h). What does not fit 32 bits makes the column of this block double.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <utility>
#include <vector>

#include "core/read/cell.h"
#include "core/read/fast/column_store.h"
#include "core/read/log_table.h"

namespace soakwright {

/// What one column showed in all blocks that one thread read.
struct ColumnSummary {
  std::size_t numbers = 0;
  double lowest = 0.0;
  double highest = 0.0;
  std::size_t empties = 0;          ///< cells with nothing in them
  std::size_t first_empty_row = 0;  ///< row of the store; only if there are empties
  LineIssue texts;
  std::vector<TextCount> each_text;  ///< text as it stands in the file; not filled if many_texts
  bool many_texts = false;           ///< more different texts than are counted one by one
  LineIssue grouped;
};
void add_line_issue(LineIssue& into, const LineIssue& more);
void add_facts(ColumnSummary& into, const ColumnSummary& more);

/// The columns of one block that hold doubles: store column and one value for each row of the block.
using WideColumns = std::vector<std::pair<std::size_t, std::vector<double>>>;

class BlockColumns {
 public:
  BlockColumns(ColumnStore& store, const std::vector<int>& places);

  void begin_block(std::size_t first_row, std::size_t rows);
  /// Counts what the block holds; gives its doubles.
  WideColumns end_block();

  [[nodiscard]] ColumnStore& store() { return store_; }
  [[nodiscard]] std::size_t count() const { return places_.size(); }
  [[nodiscard]] const std::vector<int>& places() const { return places_; }
  [[nodiscard]] bool is_wide(std::size_t column) const { return wide_index_[column] != 0; }
  /// Rises whenever a column's places or width change: what was prepared for them must be prepared again.
  [[nodiscard]] std::size_t version() const { return version_; }
  [[nodiscard]] const std::vector<ColumnSummary>& facts() const { return facts_; }

  /// Puts the cell as parse_cell() read it; `text` and `line` are noted where it is no number. Rows ascend.
  void put(std::size_t column, std::size_t row, const Cell& cell, std::string_view text, std::size_t line);
  /// For a row that has no such cell, or is not read. Not counted as an empty cell.
  void put_absent(std::size_t column, std::size_t row);

 private:
  void put_missing(std::size_t column, std::size_t row);
  void add_text(std::size_t column, std::string_view text, std::size_t line);
  void add_empties(std::size_t column, std::size_t numbers);
  bool raise_places(std::size_t column, int places);
  void widen(std::size_t column);

  ColumnStore& store_;
  std::vector<int> places_;
  std::vector<std::size_t> wide_index_;  ///< 0, or 1 more than the place in wide_
  WideColumns wide_;
  std::vector<ColumnSummary> facts_;
  /// Rows of the block, from its first, whose cell is missing but not empty. The fast reading does not report
  /// empty cells; they are what is missing and not in here.
  std::vector<std::vector<std::uint32_t>> explained_;
  std::size_t version_ = 0;
  std::size_t first_row_ = 0;
  std::size_t rows_ = 0;
};

/// Whether `units` in 10^-from units can be stored in 10^-to units.
bool fits_rescaled(std::int64_t units, int from, int to, std::int32_t& out);

}  // namespace soakwright
