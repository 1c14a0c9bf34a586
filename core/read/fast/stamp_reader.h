// SPDX-License-Identifier: GPL-3.0-or-later
// The times of the rows, read one after the other. Consecutive stamps share their date and whatever stands
// behind the clock: both are kept, and only HH:MM:SS is read again.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/read/table_plan.h"
#include "core/read/time/time_stamp.h"

namespace soakwright {

/// A date by its place in a table and the time since its midnight, in one word.
namespace packed_stamp {
inline constexpr unsigned kClockBits = 48;
inline constexpr std::int64_t kBias = 86'400'000'000'000;  // offsets can take a clock below its midnight
inline constexpr std::size_t kMostDays = std::size_t{1} << 15;
inline std::int64_t pack(std::size_t day, std::int64_t clock_ns) {
  return static_cast<std::int64_t>(day << kClockBits) | (clock_ns + kBias);
}
inline std::size_t day_of(std::int64_t packed) { return static_cast<std::size_t>(packed >> kClockBits); }
inline std::int64_t clock_of(std::int64_t packed) {
  return (packed & ((std::int64_t{1} << kClockBits) - 1)) - kBias;
}
}  // namespace packed_stamp

class StampReader {
 public:
  StampReader(const TablePlan& plan, bool careful) : plan_(plan), careful_(careful) {}

  /// `parts` are the cells of the plan, in its order. Dates and clocks come packed, all else in nanoseconds.
  /// False where there is no time in them.
  bool read(const std::string_view* parts, std::int64_t& stamp);
  /// The dates met, by their place in packed stamps.
  [[nodiscard]] const std::vector<DateFields>& days() const { return days_; }

 private:
  bool read_date_and_clock(const std::string_view* parts, std::int64_t& stamp);
  bool read_clock(const std::string_view* parts, std::int64_t& stamp) const;
  bool read_number(std::string_view text, std::int64_t& stamp) const;
  bool day_index(const DateFields& date, std::size_t& index);
  void remember(std::string_view date_text, std::string_view clock_text, std::size_t day,
                std::int64_t clock_ns);

  const TablePlan& plan_;
  bool careful_;
  std::vector<DateFields> days_;
  // What the last stamp began and ended with.
  std::string last_date_;
  std::string last_tail_;
  bool remembered_ = false;
  std::size_t last_day_ = 0;
  std::int64_t tail_ns_ = 0;  ///< what the tail adds to the clock
};

}  // namespace soakwright
