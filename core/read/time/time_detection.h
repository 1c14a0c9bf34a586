// SPDX-License-Identifier: GPL-3.0-or-later
// Step 4 of reading: which cells of a row are its time, and of what kind.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/dialect_detection.h"
#include "core/read/header_detection.h"
#include "core/read/log_head.h"
#include "core/read/reading_settings.h"

namespace soakwright {

struct TimePlan {
  TimeKind kind = TimeKind::date_time;
  std::vector<std::size_t>
      cells;  ///< one, or a date's and a clock's, or these and AM/PM; in the order of the parts
  bool unit_assumed = false;
};

/// A column or a kind that is given is taken; one that the cells contradict is a problem that names both.
Result<TimePlan> detect_time(const LogHead& head, const Dialect& dialect, const TableHeader& header,
                             const GivenSettings& given, const std::string& path);

}  // namespace soakwright
