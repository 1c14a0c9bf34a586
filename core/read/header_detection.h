// SPDX-License-Identifier: GPL-3.0-or-later
// Step 3 of reading: which line is the first row, and what the lines before it say: heading, names, units.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/dialect_detection.h"
#include "core/read/log_head.h"

namespace soakwright {

struct ColumnHeading {
  std::string header;  ///< the cell as it stands, UTF-8
  std::string name;    ///< without the unit; the column's number where the header says nothing
  std::string unit;    ///< as written; empty where nothing is said
  bool named = false;
};

struct TableHeader {
  std::size_t first_row = 0;    ///< index into LogHead::lines
  std::size_t header_line = 0;  ///< in the file, from 1; 0 where there is none
  std::size_t units_line = 0;
  std::vector<ColumnHeading> columns;  ///< one for each cell of a row
  std::vector<std::string> heading;    ///< the lines before, UTF-8
};

/// `given_line` as in GivenSettings::header_line.
Result<TableHeader> detect_header(const LogHead& head, const Dialect& dialect,
                                  std::optional<std::size_t> given_line, const std::string& path);

}  // namespace soakwright
