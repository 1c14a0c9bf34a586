// How each trace of a chart is drawn: hue and dashes by its place, so that no two of 24 are alike and
// neighbours part in grey.
#pragma once

#include <QPen>
#include <vector>

#include "app/paper/sheet_style.h"
#include "core/report/chart.h"

namespace soakwright::paper {

/// One pen for each of Chart::traces.
std::vector<QPen> trace_pens(const Chart& chart, const Scale& scale);
/// Of a stretch that was put aside.
QPen aside_pen(const Scale& scale);

}  // namespace soakwright::paper
