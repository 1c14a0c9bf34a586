// SPDX-License-Identifier: GPL-3.0-or-later
// The cells of one column as temperatures: units, emf, and what cannot be a temperature.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/record/readings.h"
#include "core/record/record.h"

namespace soakwright {

/// Readings, and those that were taken out because no thermocouple measures such a temperature.
struct ColumnReadings {
  Readings readings;
  std::optional<double> min_c, max_c;
  LineIssue out_of_range;
};

/// A column of temperatures; `unit` is not millivolt. Takes what is out of range out of the table's store.
ColumnReadings degrees_of(LogTable& table, LogColumn& column, ChannelUnit unit);
/// A column of emf in mV; `cold_c` has the terminals' temperature for each row, or one for all rows; NaN is
/// unknown.
ColumnReadings degrees_of_emf(const LogTable& table, const LogColumn& column, ThermocoupleType type,
                              const std::vector<double>& cold_c);

/// Lowest and highest of the readings.
void find_extremes(ColumnReadings& column);

}  // namespace soakwright
