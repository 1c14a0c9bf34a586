// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/trace_set.h"

namespace soakwright::gui {

std::shared_ptr<const TraceSet> trace_set(std::shared_ptr<const Record> record) {
  auto set = std::make_shared<TraceSet>();
  set->channels.reserve(record->channels.size());
  for (const Channel& channel : record->channels)
    set->channels.emplace_back(std::span<const double>{record->times_s}, channel.readings);
  set->record = std::move(record);
  return set;
}

}  // namespace soakwright::gui
