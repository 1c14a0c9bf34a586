// SPDX-License-Identifier: GPL-3.0-or-later
// Step 6 of reading: the rows of a block, into the column store.
//
// A row of the usual shape goes the fast way: cells found by LineIndex, numbers by parse_plain_decimal(),
// whatever that leaves by parse_cell(). Every other line is cut with care: quotes, short rows, repeated
// headers, text.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/read/fast/block_columns.h"
#include "core/read/fast/block_reader.h"
#include "core/read/fast/hot_loops.h"
#include "core/read/fast/line_index.h"
#include "core/read/fast/plain_decimal.h"
#include "core/read/fast/stamp_reader.h"
#include "core/read/repeated_header.h"
#include "core/read/table_plan.h"

namespace soakwright {

/// What a block gave besides numbers and stamps.
struct BlockOutcome {
  std::size_t sequence = 0;
  std::size_t first_row = 0;
  std::size_t rows = 0;
  std::vector<int> places;  ///< of each column of the store
  WideColumns wide;
  std::vector<std::size_t> dropped;  ///< rows, ascending
  std::vector<std::pair<std::size_t, std::size_t>>
      pieces;  ///< row and line where they stop running side by side
};

/// What one thread met in all its blocks.
struct LineIssues {
  LineIssue repeat_rows, repeated_headers, short_rows, long_rows, odd_lines, other_headers;
};

class RowParser {
 public:
  /// `stamps` has room for every row. `careful` turns the fast way off.
  RowParser(const TablePlan& plan, ColumnStore& store, std::int64_t* stamps, bool careful);

  BlockOutcome parse(const Block& block);

  [[nodiscard]] const std::vector<ColumnSummary>& facts() const { return columns_.facts(); }
  [[nodiscard]] const LineIssues& line_issues() const { return line_issues_; }
  [[nodiscard]] const std::vector<DateFields>& days() const { return stamps_in_.days(); }

 private:
  /// Neighbouring cells that are plain decimals of one shape.
  struct Run {
    std::size_t first_cell, last_cell, first_column;
    DecimalShape shape;
  };
  void parse_line(std::size_t first_end, std::size_t cells, std::uint32_t begin, std::uint32_t end);
  bool fast_row(const std::uint32_t* ends, std::uint32_t begin, std::uint32_t end);
  void careful_row(std::string_view line);
  void put_cell(std::size_t column, std::string_view text);
  void drop(LineIssue& line_issue, std::string_view line);
  void drop_line_without_time(std::string_view line);
  bool repeats_row_before(std::string_view line, std::int64_t stamp);
  void plan_runs();

  const TablePlan& plan_;
  BlockColumns columns_;
  StampReader stamps_in_;
  std::int64_t* stamps_;
  bool can_index_;
  decltype(HotLoops::parse_cells) parse_cells_;
  RepeatedHeader repeats_;
  LineIndex index_;
  LineIssues line_issues_;
  std::vector<Run> runs_;
  std::vector<std::size_t> lone_columns_;  ///< read with care always: double, or with too many places
  std::size_t runs_version_ = 0;
  std::vector<std::string_view> cells_;
  std::vector<std::string_view> stamp_parts_;
  std::string word_;  ///< the last cell that was text, and what it came to
  Cell word_cell_;
  std::vector<std::uint32_t> left_;  ///< cells of a run that parse_cells_ leaves to the careful reading
  // Where in the block we are.
  const char* text_ = nullptr;
  BlockOutcome outcome_;
  std::size_t row_ = 0;
  std::size_t line_ = 0;
  bool quotes_ = false;
  bool unfinished_ = false;  ///< this line ends with the file, not with a line end
  std::string_view row_text_before_;
  std::int64_t stamp_before_ = 0;
  bool stamp_before_known_ = false;
};

}  // namespace soakwright
