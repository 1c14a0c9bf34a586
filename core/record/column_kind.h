// SPDX-License-Identifier: GPL-3.0-or-later
// What each column of the log is: a temperature, an emf, or something that is not evaluated. Settled from its
// unit, its name and its readings.
//
// Nothing disappears: a name alone keeps no thermocouple apart. A column whose unit is a temperature, or that
// names no unit and runs as the thermocouples do, is evaluated, unless it is called a set point or a cold
// junction and its readings are those of one.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/units/column_content.h"

namespace soakwright {

struct ColumnKind {
  bool temperature = false;  ///< to be evaluated unless the job says otherwise; with `unit`
  bool is_degrees = false;   ///< its numbers are temperatures, whether evaluated or not
  ChannelUnit unit = ChannelUnit::celsius;
  bool unit_assumed = false;  ///< nobody names a unit
  bool name_unclear = false;  ///< evaluated although its name or unit suggests something else
  ColumnReason why;           ///< why it is not evaluated
};

/// One kind for each column of the table; `times_s` has the time of each row. A column without a unit is read
/// in `unit_of_unnamed`, the job's choice.
std::vector<ColumnKind> kinds_of(const LogTable& table, std::span<const double> times_s,
                                 std::optional<ChannelUnit> unit_of_unnamed);

/// The unit that the log itself names, where it is one that a channel can have.
std::optional<ChannelUnit> said_unit(const LogColumn& column);
}  // namespace soakwright
