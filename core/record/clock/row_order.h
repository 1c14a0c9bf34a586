// SPDX-License-Identifier: GPL-3.0-or-later
// Rows that the file holds twice or in the wrong order, put right in the table before its times become an
// axis.
//
// 1. Exports that overlap: rows whose times lie at or before the last one and that repeat earlier rows to the
//    letter are dropped. Where most of what changes in such rows is the same and some is not, nobody knows
//    which row is right: an error names both lines.
// 2. Up to three neighbouring rows in the wrong order, whose sorting makes the times even, are sorted.
#pragma once

#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

/// What was done, as notices repeat-rows and row-order.
Result<std::vector<Notice>> put_rows_in_order(LogTable& table, const std::string& path);

}  // namespace soakwright
