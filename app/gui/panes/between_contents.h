// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured between the chart's two cursors, as lines of a list, and lists as text to paste
// elsewhere.
#pragma once

#include <vector>

#include "app/gui/panes/report_list.h"
#include "core/report/chart_curves.h"
#include "core/report/report.h"

namespace soakwright::gui {

/// `between` is null where not both cursors are set; `window_s` is the width of the fits.
ListContent between_lines(const Report* report, const Between* between, double window_s);

/// With the headers; `lines` are numbers of content.lines, none: all.
QString tab_separated(const ListContent& content, const std::vector<std::size_t>& lines = {});

}  // namespace soakwright::gui
