// SPDX-License-Identifier: GPL-3.0-or-later
// How the cells of a column look in the sample rows, as far as they can be a time.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/read/dialect_detection.h"
#include "core/read/header_detection.h"
#include "core/read/log_head.h"
#include "core/read/reading_settings.h"
#include "core/read/unit_name.h"

namespace soakwright {

/// Counts of cells by what they can be; cells of one column.
struct ColumnLook {
  std::size_t full = 0;    ///< a date and a time of day
  std::size_t dates = 0;   ///< a date alone
  std::size_t clocks = 0;  ///< a time of day or an elapsed time, with colons
  std::size_t numbers = 0;
  std::size_t halves = 0;  ///< AM or PM
  std::size_t filled = 0;
  bool beyond_a_day = false;  ///< clocks that no clock shows: 25:10:00, -0:00:10
  std::size_t two_parts = 0;  ///< clocks like 12:30
  std::string first_clock;
  std::vector<double> values;
  int most_places = 0;
};

/// One per column, over the sample rows from `first_row` on.
std::vector<ColumnLook> look_at(const LogHead& head, const Dialect& dialect, std::size_t first_row);

/// Whether `some` are at least four in five of the filled cells.
bool mostly(std::size_t some, const ColumnLook& look);
bool rises(const std::vector<double>& values);
/// What numbers in a time column count, by their size: serial days and Unix times are far from anything a run
/// lasts.
std::optional<TimeKind> kind_by_size(const ColumnLook& look);
/// The unit that the name itself is: a column headed "min" or "Seconds".
std::optional<SaidUnit> unit_said(const ColumnHeading& heading);
/// Nullopt if the unit measures no elapsed time.
std::optional<TimeKind> elapsed_kind(SaidUnit unit);
/// The column of AM and PM behind a clock's.
std::optional<std::size_t> half_day_after(const std::vector<ColumnLook>& looks, std::size_t clock);
bool is_called_elapsed(const ColumnHeading& heading);

}  // namespace soakwright
