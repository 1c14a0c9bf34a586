// SPDX-License-Identifier: GPL-3.0-or-later
// The findings that a reader wants to see, in groups: by weld, by stage, or by event.
#pragma once

#include "app/gui/panes/report_list.h"
#include "core/report/report.h"

namespace soakwright::gui {

enum class FindingGroups { none, weld, stage, event };

/// `content` as finding_lines() gives it. Only lines with every word of `filter` in some cell; group headings
/// stand before their lines. An event is findings whose times overlap, whatever they are about.
ListContent finding_groups(ListContent content, const Report& report, const QString& filter,
                           FindingGroups groups);

}  // namespace soakwright::gui
