// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/row_order.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/read/table_rows.h"
#include "core/record/clock/overlapping_rows.h"
#include "core/record/clock/stamp_clock.h"

namespace soakwright {
namespace {

constexpr std::size_t kMostNeighbours = 3;
constexpr std::size_t kRowsOfAPiece = 8;

/// Sorts neighbouring rows whose times stand in the wrong order.
class NeighbourSorter {
 public:
  NeighbourSorter(const StampClock& clock, TimeKind kind)
      : clock_(clock), wraps_(kind == TimeKind::time_of_day), twice_interval_(usual_interval()) {}

  RowMoves sort() {
    RowMoves moves;
    if (twice_interval_ == 0) return moves;
    for (std::size_t row = 0; row + 1 < clock_.rows(); ++row) {
      if (step(row, row + 1) >= 0) continue;
      const auto window = window_at(row, moves.empty() ? 0 : moves.back().first + 1);
      if (!window) continue;
      const std::vector<std::size_t> sorted = sorted_rows(window->first, window->second);
      for (std::size_t i = 0; i < sorted.size(); ++i)
        if (sorted[i] != window->first + i) moves.emplace_back(window->first + i, sorted[i]);
      row = window->first + window->second - 1;
    }
    return moves;
  }

 private:
  /// Twice the interval, from pieces of rows in whatever order: rows in disorder make long steps of short
  /// ones.
  [[nodiscard]] WideNs usual_interval() const {
    std::vector<std::int64_t> intervals;
    for (std::size_t first = 0; first + 1 < clock_.rows(); first += kRowsOfAPiece) {
      const std::size_t end = std::min(first + kRowsOfAPiece, clock_.rows());
      std::int64_t low = 0;
      std::int64_t high = 0;
      for (std::size_t row = first + 1; row < end; ++row) {
        low = std::min(low, step(first, row));
        high = std::max(high, step(first, row));
      }
      if (end - first > 1) intervals.push_back((high - low) / static_cast<std::int64_t>(end - first - 1));
    }
    return twice_median(std::move(intervals));
  }
  /// Times of day run on over midnight.
  [[nodiscard]] std::int64_t step(std::size_t from, std::size_t to) const {
    const std::int64_t step = clock_.time(to) - clock_.time(from);
    if (!wraps_) return step;
    if (step < -kNanosecondsPerDay / 2) return step + kNanosecondsPerDay;
    return step > kNanosecondsPerDay / 2 ? step - kNanosecondsPerDay : step;
  }
  [[nodiscard]] std::vector<std::size_t> sorted_rows(std::size_t first, std::size_t count) const {
    std::vector<std::size_t> rows(count);
    for (std::size_t i = 0; i < count; ++i) rows[i] = first + i;
    std::stable_sort(rows.begin(), rows.end(),
                     [&](std::size_t a, std::size_t b) { return step(first, a) < step(first, b); });
    return rows;
  }
  /// Within a quarter of the interval.
  [[nodiscard]] bool is_even(std::int64_t step) const {
    const WideNs off = WideNs{2} * step - twice_interval_;
    return 4 * (off < 0 ? -off : off) <= twice_interval_;
  }
  [[nodiscard]] bool sorting_evens(std::size_t first, std::size_t count) const {
    std::vector<std::size_t> rows = sorted_rows(first, count);
    if (first > 0) rows.insert(rows.begin(), first - 1);
    if (first + count < clock_.rows()) rows.push_back(first + count);
    for (std::size_t i = 0; i + 1 < rows.size(); ++i)
      if (!is_even(step(rows[i], rows[i + 1]))) return false;
    return rows.size() > count;
  }
  /// First row and number of rows around the step back behind `row`; none of them before `from`.
  [[nodiscard]] std::optional<std::pair<std::size_t, std::size_t>> window_at(std::size_t row,
                                                                             std::size_t from) const {
    for (std::size_t count = 2; count <= kMostNeighbours; ++count)
      for (std::size_t before = 0; before + 2 <= count; ++before) {
        if (row < from + before || row - before + count > clock_.rows()) continue;
        if (sorting_evens(row - before, count)) return std::pair{row - before, count};
      }
    return std::nullopt;
  }

  const StampClock& clock_;
  bool wraps_;
  WideNs twice_interval_;
};

void sort_neighbours(LogTable& table, std::vector<Notice>& notices) {
  StampClock clock{table};
  if (!clock.runs_backward()) return;
  const RowMoves moves = NeighbourSorter{clock, table.time.value}.sort();
  if (moves.empty()) return;
  const std::size_t line = clock.line(moves.front().first);
  reorder_rows(moves, table);
  notices.push_back({"row-order", line, moves.size(), std::nullopt,
                     state(Sentence::rows_in_wrong_order, how_many(moves.size()))});
}

}  // namespace

Result<std::vector<Notice>> put_rows_in_order(LogTable& table, const std::string& path) {
  std::vector<Notice> notices;
  if (auto problem = drop_overlapping_rows(table, path, notices)) return *std::move(problem);
  sort_neighbours(table, notices);
  return notices;
}

}  // namespace soakwright
