// SPDX-License-Identifier: GPL-3.0-or-later
// The stamps of a log's rows while they are put right: what put_rows_in_order() and make_time_axis() look at.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/read/log_table.h"
#include "core/units/local_time.h"

namespace soakwright {

/// Nanoseconds where multiples of steps are made: a damaged stamp makes a step of decades.
__extension__ using WideNs = __int128;

/// Twice the median, so that the mean of two middle steps stays an integer; 0 of nothing.
WideNs twice_median(std::vector<std::int64_t> steps_ns);

/// What is to be known of all steps between rows, in nanoseconds.
struct StampSteps {
  WideNs twice_median = 0;  ///< of those forward
  std::int64_t shortest = INT64_MAX;
  std::int64_t longest = INT64_MIN;
};

/// All in nanoseconds. The stamps are copied only where one has to be changed.
class StampClock {
 public:
  /// Longer steps than so many usual ones are gaps.
  static constexpr int kIntervalsOfAGap = 3;

  explicit StampClock(const LogTable& table)
      : table_(table), time_(table.stamps_ns.data()), shift_from_(1, {0, 0}) {}
  StampClock(const StampClock&) = delete;
  StampClock& operator=(const StampClock&) = delete;

  [[nodiscard]] std::size_t rows() const { return table_.stamps_ns.size(); }
  [[nodiscard]] std::span<const std::int64_t> times() const { return {time_, rows()}; }
  [[nodiscard]] std::int64_t time(std::size_t row) const { return time_[row]; }
  /// From this row to the next.
  [[nodiscard]] std::int64_t step(std::size_t row) const { return time_[row + 1] - time_[row]; }
  /// As the log prints it; after unfold() with the days since the first row's.
  [[nodiscard]] std::int64_t printed(std::size_t row) const {
    return unfolded_.empty() ? table_.stamps_ns[row] : unfolded_[row];
  }
  [[nodiscard]] std::size_t line(std::size_t row) const { return table_.lines.line_of(row); }

  /// Twice the median step forward; 0 where there is none.
  [[nodiscard]] WideNs twice_interval() { return steps().twice_median; }
  [[nodiscard]] bool runs_forward() { return steps().shortest > 0; }
  [[nodiscard]] bool runs_backward() { return steps().shortest < 0; }
  /// The longest step that is no gap.
  [[nodiscard]] std::int64_t longest_usual_step();
  [[nodiscard]] bool has_gap() { return steps().longest > longest_usual_step(); }

  void set(std::size_t row, WideNs time);
  /// A row, and by how much it and all after it move.
  using Moves = std::vector<std::pair<std::size_t, WideNs>>;
  /// `moves` ascend by row.
  void move(const Moves& moves);
  /// The same for midnights, before anything else is moved: the log means these later days itself.
  void unfold(const Moves& midnights);
  /// Some time did not fit: it lies more than 146 years from the first.
  [[nodiscard]] bool too_far() const { return too_far_; }
  /// Where the times and what the log prints begin to differ by another amount: a row, and how much later its
  /// time is than what is printed there. The first is row 0.
  [[nodiscard]] std::vector<std::pair<std::size_t, std::int64_t>> shifts() const;

 private:
  const StampSteps& steps();

  const LogTable& table_;
  const std::int64_t* time_;
  std::vector<std::int64_t> moved_;  ///< empty while nothing was changed
  std::vector<std::int64_t> unfolded_;
  std::optional<StampSteps> steps_;  ///< since the last change
  Moves shift_from_;
  bool too_far_ = false;
};

}  // namespace soakwright
