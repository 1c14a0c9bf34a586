// SPDX-License-Identifier: GPL-3.0-or-later
// The readings of a record as they were read: a line for each row, °C, missing ones empty.
#pragma once

#include <string>

#include "core/record/record.h"

namespace soakwright {

/// Columns: seconds from the first sample, the moment as the log prints it, then each channel, with its unit
/// behind the name, and each other column that is a temperature.
std::string readings_csv(const Record& record);

}  // namespace soakwright
