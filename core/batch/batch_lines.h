// SPDX-License-Identifier: GPL-3.0-or-later
// One record of a batch as text: a JSON line, rows of the table, and what a summary shows.
//
// JSON lines are in the order of their bytes, so that the lines of several parts merge with `sort`.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/batch/batch_entry.h"
#include "core/batch/batch_row.h"
#include "core/evaluate/analysis.h"
#include "core/units/temperature.h"

namespace soakwright {

/// What the JSON line of an entry begins with; decides the order.
std::string line_head(const BatchEntry& entry);

/// What there is of one record: an analysis, problems, or both (a report that could not be written).
struct RecordOutcome {
  const BatchEntry& entry;
  const Analysis* analysis = nullptr;
  const std::string* result = nullptr;  ///< of result_json()
  bool report_written = false;
  Problems problems;
};

BatchRow row_of(const RecordOutcome& outcome, TemperatureUnit unit);

/// With its line end.
std::string json_line(const RecordOutcome& outcome);

/// The table's first line.
std::string csv_header();
/// One line for each weld, at least one.
std::string csv_lines(const RecordOutcome& outcome);

/// Whether a file that begins so is an output of a batch.
bool begins_like_output(std::string_view first_bytes);

}  // namespace soakwright
