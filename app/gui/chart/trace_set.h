// SPDX-License-Identifier: GPL-3.0-or-later
// Every channel of a record prepared for drawing, in the record's order.
#pragma once

#include <memory>
#include <vector>

#include "app/gui/chart/trace_pyramid.h"
#include "core/record/record.h"

namespace soakwright::gui {

/// Keeps the record alive, whose time axis the pyramids look at.
struct TraceSet {
  std::shared_ptr<const Record> record;
  std::vector<TracePyramid> channels;
};

std::shared_ptr<const TraceSet> trace_set(std::shared_ptr<const Record> record);

}  // namespace soakwright::gui
