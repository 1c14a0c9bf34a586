// SPDX-License-Identifier: GPL-3.0-or-later
// The decimals of all columns of one log, as 32-bit integers.
//
// Rows come in tiles: within a tile each column lies in one piece, and tiles follow each other without a
// hole. So a row is written close together while it is parsed, a column is read in long pieces, and the
// memory touched is what the rows need, however many will come. Columns are a cache line longer than a power
// of two, so that the columns of one row do not fall on the same lines of the cache.
#pragma once

#include <cstddef>
#include <cstdint>

#include "core/read/fast/page_arena.h"

namespace soakwright {

class ColumnStore {
 public:
  static constexpr std::int32_t kMissing = INT32_MIN;

  ColumnStore() = default;
  /// Room for `rows` rows of `columns` columns; empty() where there is no memory for it.
  ColumnStore(std::size_t columns, std::size_t rows);

  [[nodiscard]] bool empty() const { return arena_.empty(); }
  [[nodiscard]] std::size_t columns() const { return columns_; }
  [[nodiscard]] std::size_t capacity_rows() const { return capacity_rows_; }
  /// Row r of a column is at column(c)[(r >> row_shift()) * tile_stride() + (r & row_mask())].
  [[nodiscard]] unsigned row_shift() const { return row_shift_; }
  [[nodiscard]] std::size_t row_mask() const { return (std::size_t{1} << row_shift_) - 1; }
  [[nodiscard]] std::size_t tile_stride() const { return tile_stride_; }
  [[nodiscard]] std::size_t column_stride() const { return column_stride_; }
  [[nodiscard]] std::int32_t* column(std::size_t column) const {
    return static_cast<std::int32_t*>(arena_.data()) + column * column_stride_;
  }
  [[nodiscard]] std::int32_t& at(std::size_t column_index, std::size_t row) const {
    return column(column_index)[(row >> row_shift_) * tile_stride_ + (row & row_mask())];
  }
  /// Calls piece(first, count, pointer) for each unbroken piece of rows [from, to) of a column.
  template <typename Visit>
  void visit(std::size_t column_index, std::size_t from, std::size_t to, Visit&& piece) const {
    while (from < to) {
      const std::size_t tile_end = ((from >> row_shift_) + 1) << row_shift_;
      const std::size_t count = (to < tile_end ? to : tile_end) - from;
      piece(from, count, &at(column_index, from));
      from += count;
    }
  }

 private:
  PageArena arena_;
  std::size_t columns_ = 0;
  std::size_t capacity_rows_ = 0;
  unsigned row_shift_ = 0;
  std::size_t column_stride_ = 0;
  std::size_t tile_stride_ = 0;
};

}  // namespace soakwright
