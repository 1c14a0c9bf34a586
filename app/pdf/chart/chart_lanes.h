// SPDX-License-Identifier: GPL-3.0-or-later
// The strips along a chart's time axis: findings by number above the plot; below it the stages as evaluated,
// the phases that the record shows, the job's periods, remarks and take-overs.
#pragma once

#include "app/pdf/chart/chart_view.h"
#include "app/pdf/sheet_style.h"

class QPainter;

namespace soakwright::pdf {

/// Heights that the strips of this chart need at this width.
double findings_height(const Chart& chart, const ChartMap& map, const Scale& scale);
double lanes_height(const Chart& chart, const Scale& scale);

/// `bottom`: the plot's upper edge.
void paint_findings(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart);
/// `top`: the plot's lower edge; `names`: room for the lanes' names to the left of the plot.
void paint_lanes(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                 double names);

}  // namespace soakwright::pdf
