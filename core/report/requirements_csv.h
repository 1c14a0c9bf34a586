// SPDX-License-Identifier: GPL-3.0-or-later
// The requirements of records as a table: one line each, numbers in the units of the result (JSON).
#pragma once

#include <string>

#include "core/evaluate/analysis.h"

namespace soakwright {

std::string requirements_csv_header();
/// The lines of one record; `log` names it in the first column. `analysis` must have verdicts.
std::string requirements_csv(const Analysis& analysis, const std::string& log);

}  // namespace soakwright
