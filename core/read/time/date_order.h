// SPDX-License-Identifier: GPL-3.0-or-later
// Step 7 of reading: which of the three numbers of a date is the day.
//
// Settled by what no calendar has (a month of 17), by the width of the year, by time running forward, and by
// the pace: a run that crosses midnight goes on evenly in one order and leaps by weeks in the other. Where
// two orders still fit, nothing is guessed.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/fast/line_map.h"
#include "core/read/reading_settings.h"
#include "core/read/time/time_stamp.h"
#include "core/units/setting.h"

namespace soakwright {

/// Where the date changes from one row to the next.
struct DateChange {
  std::size_t row = 0;           ///< the first row of the new date
  std::size_t from = 0, to = 0;  ///< places in the table of dates
  std::int64_t clock_step_ns = 0;
};

struct DateEvidence {
  std::vector<DateFields> dates;        ///< all that occur, by place
  std::vector<std::size_t> first_rows;  ///< where each stands first
  std::vector<DateChange> changes;
  std::int64_t interval_ns = 0;  ///< the usual step within a date; 0 where there is none
};

struct SettledDates {
  Setting<FieldOrder> order;
  std::vector<std::int64_t> day_numbers;  ///< by place
  /// Where an order was given, and only another one goes on evenly: that one.
  std::optional<FieldOrder> even_order;
};

Result<SettledDates> settle_dates(const DateEvidence& evidence, std::optional<FieldOrder> given,
                                  const LineMap& lines, const std::string& path);

}  // namespace soakwright
