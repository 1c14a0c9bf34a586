// SPDX-License-Identifier: GPL-3.0-or-later
// Step 2 of reading: delimiter, decimal sign and number of cells, from the lines that hold rows.
//
// Every delimiter is tried on the first lines; the one that makes most cells into numbers and times, and
// fewest into text, is the log's. Runs of spaces are taken only where nothing else fits.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/log_head.h"
#include "core/read/reading_settings.h"
#include "core/units/setting.h"

namespace soakwright {

/// A log has no more columns than this.
inline constexpr std::size_t kMostColumns = 10'000;

struct Dialect {
  Setting<char> delimiter;  ///< ' ' for runs of spaces
  Setting<char> decimal;
  std::size_t cells = 0;  ///< in a line that holds a row
  std::vector<std::size_t>
      rows;  ///< indices into LogHead::lines of some lines that look like rows, ascending
};

/// A problem where no rows are found, where the settings given do not fit them, or where they have more than
/// kMostColumns cells.
Result<Dialect> detect_dialect(const LogHead& head, const GivenSettings& given, const std::string& path);

/// What a cell looks like, whatever its column.
enum class CellLook { empty, number, date, clock, date_and_clock, no_value, text };
CellLook look_of(std::string_view cell, char decimal);

}  // namespace soakwright
