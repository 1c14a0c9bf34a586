// SPDX-License-Identifier: GPL-3.0-or-later
// The report's lists as lines for the window. Every word comes from the report.
#pragma once

#include "app/gui/panes/report_list.h"
#include "core/report/report.h"

namespace soakwright::gui {

/// Worst first, otherwise in the procedure's order.
ListContent requirement_lines(const Report* report);
enum class FindingOrder { worst_first, time };
/// Worst first is by the events' numbers; in time, findings without one come last.
ListContent finding_lines(const Report* report, FindingOrder order = FindingOrder::worst_first);
/// What is not met or inconclusive, in order of time, each with its explanation; the first deviation above
/// them.
ListContent deviation_lines(const Report* report);
ListContent phase_lines(const Report* report);
ListContent suspect_lines(const Report* report);
ListContent notice_lines(const Report* report);

}  // namespace soakwright::gui
