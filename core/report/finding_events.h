// SPDX-License-Identifier: GPL-3.0-or-later
// Findings that are one event: a gap is one event, whatever the number of thermocouples and limits that it
// leaves open.
#pragma once

#include <cstddef>
#include <vector>

#include "core/evaluate/verdict.h"

namespace soakwright {

/// Indices into `findings`, grouped. Findings are one event if they begin and end together (to within two
/// intervals of the log), or if they are temperatures of one thermocouple at one time (an excursion above
/// the range and the same readings above the maximum temperature). Two of one thermocouple and requirement
/// are two events. Of those without a time, if they are of one requirement. Events are in the order not met,
/// inconclusive, note, each by time; findings within an event in their own order.
std::vector<std::vector<std::size_t>> finding_events(const std::vector<Finding>& findings, double interval_s);

}  // namespace soakwright
