// SPDX-License-Identifier: GPL-3.0-or-later
// The known temperatures of a group of channels at the record's rows, a tile of rows at a time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/measure/holds/group_range.h"
#include "core/measure/traces/trace.h"

namespace soakwright {

/// Rows [first, end) of one channel: pointers to its values, and to which of them are known (null: all).
struct ColumnTile {
  const double* celsius = nullptr;
  const std::uint8_t* known = nullptr;
};

/// Walks rows [first, end) of the record in tiles. Calls visit(first_row, count, columns) in row order,
/// columns in the group's order. A channel missing in a row, but joined by a line there, is known.
class RowValues {
 public:
  RowValues(const Record& record, const TraceSet& set, Group group);

  template <typename Visit>
  void visit_tiles(std::size_t first, std::size_t end, Visit&& visit) {
    for (std::size_t at = first; at < end; at += kRows) {
      const std::size_t count = end - at < kRows ? end - at : kRows;
      for (std::size_t member = 0; member < group_.size(); ++member) fill(member, at, count);
      if (!visit(at, count, columns_)) return;
    }
  }

  /// Rows whose times belong to [from, to].
  [[nodiscard]] std::pair<std::size_t, std::size_t> rows_within(double from, double to) const;

  static constexpr std::size_t kRows = 512;  ///< of a tile, but for the last

 private:
  void fill(std::size_t member, std::size_t first, std::size_t count);

  const Record& record_;
  const TraceSet& set_;
  std::vector<std::size_t> group_;
  std::vector<bool> whole_;  ///< known at every row, straight from the source
  std::vector<ColumnTile> columns_;
  std::vector<double> celsius_;
  std::vector<std::uint8_t> known_;
};

}  // namespace soakwright
