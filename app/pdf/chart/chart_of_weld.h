// SPDX-License-Identifier: GPL-3.0-or-later
// The part of a chart that is about one of several welds.
#pragma once

#include <string>

#include "core/report/report.h"

namespace soakwright::pdf {

/// Traces of other welds are off; their ranges, stages and findings are left out. All of it where `weld` is
/// empty.
Chart chart_of_weld(const Report& report, const std::string& weld);

}  // namespace soakwright::pdf
