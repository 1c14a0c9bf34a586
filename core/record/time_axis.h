// From the stamps of the rows to one time axis that only runs forward. What does not is put right where that
// is safe, and always said.
//
// 1. midnight in stamps without a date       4. a clock put forward, where the job names it
// 2. several rows with one time              5. interval and gaps
// 3. a clock put back, or a faulty one
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

struct TimeAxis {
  std::vector<double> times_s;
  std::optional<LocalTime> start;  ///< only where the stamps have a date
  double interval_s = 0.0;
  std::vector<std::size_t> breaks;
  std::vector<Notice> notices;

  /// Rows from `first_row` on whose printed clock and the axis differ by the same amount.
  struct Piece {
    std::size_t first_row = 0;
    std::int64_t first_printed_ns = 0, last_printed_ns = 0;
    std::int64_t shift_ns = 0;  ///< added to the printed time
  };
  std::vector<Piece> pieces;
  /// The axis at a time as the log prints it; of two such times the first. Only where there is a start.
  [[nodiscard]] double seconds_of(LocalTime printed) const;
};

/// `clock_forward` is the moment at which the job says that the clock was put forward; `job_file` is named
/// where the log contradicts it.
Result<TimeAxis> make_time_axis(const LogTable& table, const std::string& path,
                                std::optional<LocalTime> clock_forward, const std::string& job_file);

}  // namespace soakwright
