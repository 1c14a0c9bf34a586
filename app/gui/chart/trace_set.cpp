// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/trace_set.h"

#include "core/system/parallel_for.h"

namespace soakwright::gui {

std::shared_ptr<const TraceSet> trace_set(std::shared_ptr<const Record> record) {
  auto set = std::make_shared<TraceSet>();
  set->channels.resize(record->channels.size());
  parallel_for(set->channels.size(), [&](std::size_t i) {
    set->channels[i] = TracePyramid(record->times_s, record->channels[i].readings);
  });
  set->record = std::move(record);
  return set;
}

}  // namespace soakwright::gui
