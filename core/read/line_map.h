// From a row of the table to its line in the file: straight pieces, so that a clean log needs one.
#pragma once

#include <algorithm>
#include <cstddef>
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

 private:
  struct Piece {
    std::size_t row;
    std::size_t line;
  };
  std::vector<Piece> pieces_;
};

}  // namespace soakwright
