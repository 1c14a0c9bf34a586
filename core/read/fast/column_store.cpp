// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/column_store.h"

namespace soakwright {
namespace {

// A tile of about this many cells stays in the second-level cache while its rows are written.
constexpr std::size_t kTileCells = std::size_t{1} << 15;
constexpr unsigned kLargestShift = 12;
constexpr std::size_t kCacheLineCells = 16;

}  // namespace

ColumnStore::ColumnStore(std::size_t columns, std::size_t rows) : columns_(columns) {
  if (columns == 0 || rows == 0) return;
  while (row_shift_ < kLargestShift && (columns << (row_shift_ + 1)) <= kTileCells) ++row_shift_;
  const std::size_t tile_rows = std::size_t{1} << row_shift_;
  column_stride_ = tile_rows >= kCacheLineCells ? tile_rows + kCacheLineCells : tile_rows;
  tile_stride_ = column_stride_ * columns;
  const std::size_t tiles = (rows + tile_rows - 1) / tile_rows;
  arena_ = PageArena(tiles * tile_stride_ * sizeof(std::int32_t));
  if (!arena_.empty()) capacity_rows_ = tiles * tile_rows;
}

}  // namespace soakwright
