// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/overlapping_rows.h"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "core/read/table_rows.h"
#include "core/record/clock/clock_problems.h"
#include "core/record/clock/midnights.h"
#include "core/record/clock/stamp_clock.h"

namespace soakwright {
namespace {

// So many rows of one time are looked through for the one that is repeated.
constexpr std::size_t kMostOfOneTime = 64;
// Up to so many pieces of rising times are searched one by one; of more, all rows are sorted once.
constexpr std::size_t kMostPieces = 32;

/// Rows before some row, by their time.
class EarlierRows {
 public:
  explicit EarlierRows(const StampClock& clock) : clock_(clock) {}

  /// The rows before `end` stay; those from the last end on follow in rising times.
  void reach(std::size_t end) {
    ends_.push_back(end);
    if (ends_.size() == kMostPieces + 1) sort_all();
  }
  /// Rows of this time, ascending.
  void find(std::int64_t time, std::vector<std::size_t>& rows) const {
    rows.clear();
    if (!sorted_.empty()) return find_sorted(time, rows);
    std::size_t begin = 0;
    for (const std::size_t end : ends_) {
      const auto times = clock_.times().subspan(begin, end - begin);
      auto at = std::lower_bound(times.begin(), times.end(), time);
      for (; at != times.end() && *at == time && rows.size() < kMostOfOneTime; ++at)
        rows.push_back(begin + static_cast<std::size_t>(at - times.begin()));
      begin = end;
    }
  }

 private:
  void sort_all() {
    sorted_.reserve(clock_.rows());
    for (std::size_t row = 0; row < clock_.rows(); ++row) sorted_.emplace_back(clock_.time(row), row);
    std::sort(sorted_.begin(), sorted_.end());
  }
  void find_sorted(std::int64_t time, std::vector<std::size_t>& rows) const {
    for (auto at = std::lower_bound(sorted_.begin(), sorted_.end(), std::pair{time, std::size_t{0}});
         at != sorted_.end() && at->first == time && at->second < ends_.back() &&
         rows.size() < kMostOfOneTime;
         ++at)
      rows.push_back(at->second);
  }

  const StampClock& clock_;
  std::vector<std::size_t> ends_;
  std::vector<std::pair<std::int64_t, std::size_t>> sorted_;
};

/// What the rows behind one step back are, beside the earlier rows of their times.
struct Overlap {
  std::vector<std::size_t> repeats;  ///< rows
  std::optional<std::pair<std::size_t, std::size_t>>
      difference;  ///< the first row that differs, and the earlier one
  // Cells beside those of the earlier row. The same proves something only where it is not the same all the
  // time.
  std::size_t changing_and_same = 0;
  std::size_t different = 0;
};

class OverlapFinder {
 public:
  OverlapFinder(const LogTable& table, const StampClock& clock)
      : table_(table), clock_(clock), earlier_(clock) {}

  std::vector<Overlap> find() {
    std::vector<Overlap> overlaps;
    std::int64_t last = clock_.time(0);
    for (std::size_t row = 1; row < clock_.rows(); ++row) {
      if (clock_.step(row - 1) < 0) {
        earlier_.reach(row);
        overlaps.push_back(overlap_at(row, last));
      }
      last = std::max(last, clock_.time(row));
    }
    return overlaps;
  }

 private:
  Overlap overlap_at(std::size_t first, std::int64_t last) {
    Overlap overlap;
    std::size_t of_its_time = 0;
    for (std::size_t row = first; row < clock_.rows() && clock_.time(row) <= last; ++row) {
      if (row > first && clock_.step(row - 1) < 0) break;
      of_its_time = row > first && clock_.step(row - 1) == 0 ? of_its_time + 1 : 0;
      if (of_its_time == 0) earlier_.find(clock_.time(row), candidates_);
      if (candidates_.empty()) continue;
      const auto same = std::find_if(candidates_.begin(), candidates_.end(), [&](std::size_t candidate) {
        return same_cells(table_, candidate, row);
      });
      if (same != candidates_.end()) {
        overlap.repeats.push_back(row);
        compare(row, *same, overlap);
      } else if (of_its_time < candidates_.size()) {
        const std::size_t beside = candidates_[of_its_time];
        if (!overlap.difference) overlap.difference = {row, beside};
        compare(row, beside, overlap);
      }
    }
    return overlap;
  }
  void compare(std::size_t row, std::size_t earlier, Overlap& overlap) const {
    for (const LogColumn& column : table_.columns)
      if (!same_cell(table_, column, row, earlier))
        ++overlap.different;
      else if (earlier > 0 && !same_cell(table_, column, earlier - 1, earlier))
        ++overlap.changing_and_same;
  }

  const LogTable& table_;
  const StampClock& clock_;
  EarlierRows earlier_;
  std::vector<std::size_t> candidates_;
};

}  // namespace

std::optional<Problem> drop_overlapping_rows(LogTable& table, const std::string& path,
                                             std::vector<Notice>& notices) {
  StampClock clock{table};
  if (!clock.runs_backward()) return std::nullopt;
  if (table.time.value == TimeKind::time_of_day) clock.unfold(midnights_of(clock));
  std::vector<std::size_t> dropped;
  for (const Overlap& overlap : OverlapFinder{table, clock}.find()) {
    if (!overlap.difference) {
      dropped.insert(dropped.end(), overlap.repeats.begin(), overlap.repeats.end());
    } else if (overlap.changing_and_same > overlap.different) {
      const auto [row, earlier] = *overlap.difference;
      return overlap_that_differs(path, clock.line(row), clock.line(earlier));
    }
  }
  if (dropped.empty()) return std::nullopt;
  notices.push_back({"repeat-rows", clock.line(dropped.front()), dropped.size(), std::nullopt,
                     state(Sentence::rows_of_overlap, how_many(dropped.size()))});
  take_rows_out(dropped, table);
  return std::nullopt;
}

}  // namespace soakwright
