// SPDX-License-Identifier: GPL-3.0-or-later
// When a column's name in a job is that of a column in the log.
#pragma once

#include <string>
#include <string_view>

namespace soakwright {

/// Names match whatever their case (ASCII) and outer spaces: those that are equal here.
std::string name_to_match(std::string_view name);

}  // namespace soakwright
