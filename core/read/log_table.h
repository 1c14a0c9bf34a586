// SPDX-License-Identifier: GPL-3.0-or-later
// A log as a table: what stands in the file, cell by cell, and how it was read. No meaning is given to a
// column here beyond its name and unit; channels are made of columns in core/record.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/read/fast/column_store.h"
#include "core/read/fast/line_map.h"
#include "core/read/reading_settings.h"
#include "core/units/setting.h"

namespace soakwright {

/// Something odd in the cells or lines: how often, and where it first stands.
struct LineIssue {
  std::size_t count = 0;
  std::size_t line = 0;  ///< in the file, from 1
  std::string text;      ///< what stood there first, UTF-8
};

/// One text that stands in cells of a column.
struct TextCount {
  std::string text;  ///< UTF-8, cut where it is long
  std::size_t count = 0;
  std::size_t line = 0;  ///< where it first stands
};

/// A column that is not a time column. Its cells are decimals in units of the column's last digit, or doubles
/// where one cell does not fit that (`wide`).
struct LogColumn {
  std::size_t number = 0;  ///< in the file, from 1
  std::string header;      ///< the header cell as it stands, empty where there is none
  std::string name;        ///< the header cell without its unit; the number where there is no header
  std::string unit;        ///< as said in the units row or the name; empty where nothing is said
  int places = 0;          ///< decimal places of the column's last digit
  std::size_t store_column = 0;
  std::vector<double> wide;  ///< NaN is missing; empty for plain decimals
  std::size_t numbers = 0;   ///< cells that hold a number
  double lowest = 0.0;       ///< of the numbers, in the log's unit; only where there are any
  double highest = 0.0;
  LineIssue empties;  ///< cells with nothing in them; cells that a short or a long row lacks are not counted
  LineIssue texts;    ///< cells that hold text
  std::vector<TextCount> each_text;  ///< in the order of lines; empty if too many different texts stand there
  LineIssue grouped;                 ///< cells with digit grouping, not accepted as numbers
};

struct LogTable {
  std::string sha256;
  std::uint64_t bytes = 0;
  Setting<TextEncoding> encoding;
  Setting<char> delimiter;  ///< ' ' for runs of spaces
  Setting<char> decimal;
  std::optional<Setting<FieldOrder>> dates;  ///< where the stamps have a date
  /// The order in which time runs on evenly, where another one was given.
  std::optional<FieldOrder> dates_by_pace;
  Setting<TimeKind> time = {TimeKind::elapsed_s};
  Setting<std::string> time_column;       ///< the name of the first of time_columns
  std::vector<std::size_t> time_columns;  ///< numbers in the file
  bool time_unit_assumed = false;
  Setting<std::size_t> header_line;  ///< 0 where there is none
  std::size_t first_row_line = 0;
  std::vector<std::string> heading;

  /// Per row, nanoseconds: of local time since 1970 where has_date(time), since midnight or since some zero
  /// elsewhere.
  std::vector<std::int64_t> stamps_ns;
  LineMap lines;  ///< row to line
  std::vector<LogColumn> columns;
  std::shared_ptr<ColumnStore> store;

  LineIssue repeat_rows;       ///< dropped: the row before repeated to the letter
  LineIssue repeated_headers;  ///< dropped
  LineIssue short_rows;        ///< kept or, where not even a reading is left, dropped
  LineIssue long_rows;         ///< kept, with no reading: nobody knows which cell belongs to which column
  LineIssue odd_lines;         ///< dropped: no time in it

  [[nodiscard]] std::size_t rows() const { return stamps_ns.size(); }
  /// The number in a cell of a column, whose places make `power_of_ten` of its units one; NaN where there is
  /// none.
  [[nodiscard]] double number(const LogColumn& column, std::size_t row, double power_of_ten) const {
    if (!column.wide.empty()) return column.wide[row];
    const std::int32_t units = store->at(column.store_column, row);
    return units == ColumnStore::kMissing ? std::numeric_limits<double>::quiet_NaN() : units / power_of_ten;
  }
};

}  // namespace soakwright
