// SPDX-License-Identifier: GPL-3.0-or-later
// How each trace of a chart is drawn: hue and dashes by its place, so that no two of 24 are alike and
// neighbours part in grey.
#pragma once

#include <QPen>
#include <vector>

#include "app/pdf/sheet_style.h"
#include "core/report/chart.h"

namespace soakwright::pdf {

/// One pen for each of Chart::traces.
std::vector<QPen> trace_pens(const Chart& chart, const Scale& scale);
/// Of a time_range that was excluded.
QPen exclusion_pen(const Scale& scale);

}  // namespace soakwright::pdf
