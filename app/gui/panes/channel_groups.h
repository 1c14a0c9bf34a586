// SPDX-License-Identifier: GPL-3.0-or-later
// Channels that are looked at together: those of one role, those of one weld.
#pragma once

#include <QString>
#include <vector>

#include "core/report/report.h"

namespace soakwright::gui {

struct ChannelGroup {
  QString name;                ///< "evaluated thermocouples", "weld B-204"
  std::vector<bool> channels;  ///< by channel of the record
};

/// None that has every channel of the chart, or none of them.
std::vector<ChannelGroup> channel_groups(const Report& report);

}  // namespace soakwright::gui
