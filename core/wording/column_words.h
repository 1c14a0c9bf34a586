// SPDX-License-Identifier: GPL-3.0-or-later
// What a column holds that is no thermocouple's, in words.
#pragma once

#include <string>

#include "core/units/column_content.h"

namespace soakwright {

/// "set point"; empty for `none` and for a unit, which only the reason has.
std::string content_text(ColumnContent content);
/// "a set point".
std::string one_of_text(ColumnContent content);
/// "set point", "unit %".
std::string reason_text(const ColumnReason& reason);

}  // namespace soakwright
