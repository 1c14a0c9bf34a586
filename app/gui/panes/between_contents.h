// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured between the chart's two cursors, as lines of a list.
#pragma once

#include "app/gui/panes/report_list.h"
#include "core/report/chart_curves.h"
#include "core/report/report.h"

namespace soakwright::gui {

/// `between` is null where not both cursors are set; `window_s` is the width of the fits.
ListContent between_lines(const Report* report, const Between* between, double window_s);

}  // namespace soakwright::gui
