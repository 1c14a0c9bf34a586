// SPDX-License-Identifier: GPL-3.0-or-later
// From a row of the table to its line in the file: straight pieces, so that a clean log needs one.
#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace soakwright {

class LineMap {
 public:
  /// From `row` on, rows follow each other line by line, beginning at `line`. Rows must ascend.
  void add(std::size_t row, std::size_t line) {
    if (!pieces_.empty() && pieces_.back().line + (row - pieces_.back().row) == line) return;
    if (!pieces_.empty() && pieces_.back().row == row)
      pieces_.back().line = line;
    else
      pieces_.push_back({row, line});
  }
  [[nodiscard]] std::size_t line_of(std::size_t row) const {
    if (pieces_.empty()) return 0;
    auto after = std::upper_bound(pieces_.begin(), pieces_.end(), row,
                                  [](std::size_t wanted, const Piece& piece) { return wanted < piece.row; });
    if (after != pieces_.begin()) --after;
    return after->line + (row - after->row);
  }
  /// The same with the rows `dropped` (ascending) taken out.
  [[nodiscard]] LineMap without(const std::vector<std::size_t>& dropped) const {
    LineMap out;
    std::size_t gone = 0;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      std::size_t row = pieces_[i].row;
      const std::size_t end = i + 1 < pieces_.size() ? pieces_[i + 1].row : static_cast<std::size_t>(-1);
      while (row < end) {
        if (gone < dropped.size() && dropped[gone] == row) {
          ++gone;
          ++row;
          continue;
        }
        out.add(row - gone, pieces_[i].line + (row - pieces_[i].row));
        if (gone == dropped.size() || dropped[gone] >= end) break;
        row = dropped[gone];
      }
    }
    return out;
  }
  /// The same with rows in another order: each pair is a row and the one whose line it gets. Ascends by the
  /// first of them.
  [[nodiscard]] LineMap reordered(const std::vector<std::pair<std::size_t, std::size_t>>& moves) const {
    LineMap out;
    std::size_t next = 0;  // of pieces_
    for (std::size_t i = 0; i < moves.size(); ++i) {
      const auto [row, from] = moves[i];
      while (next < pieces_.size() && pieces_[next].row < row) {
        if (i == 0 || pieces_[next].row > moves[i - 1].first) out.add(pieces_[next].row, pieces_[next].line);
        ++next;
      }
      out.add(row, line_of(from));
      if (i + 1 == moves.size() || moves[i + 1].first != row + 1) out.add(row + 1, line_of(row + 1));
    }
    for (; next < pieces_.size(); ++next)
      if (pieces_[next].row > moves.back().first) out.add(pieces_[next].row, pieces_[next].line);
    return out;
  }

 private:
  struct Piece {
    std::size_t row;
    std::size_t line;
  };
  std::vector<Piece> pieces_;
};

}  // namespace soakwright
