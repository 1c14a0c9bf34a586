// SPDX-License-Identifier: GPL-3.0-or-later
// Step 8 of reading: what the threads brought, as one table: columns of the same places throughout, lines
// that are no rows taken out, stamps as moments.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/fast/row_parser.h"
#include "core/read/header_detection.h"
#include "core/read/log_table.h"
#include "core/read/table_plan.h"

namespace soakwright {

/// All that one thread leaves behind.
struct ThreadResult {
  std::vector<BlockOutcome> blocks;
  std::vector<ColumnSummary> facts;
  LineIssues line_issues;
  std::vector<DateFields> days;
};

/// Fills stamps, lines, columns and line_issues of `table`, whose store holds `rows` rows.
Problems assemble_table(const TablePlan& plan, const TableHeader& header,
                        std::vector<ThreadResult> thread_results, std::int64_t* stamps, std::size_t rows,
                        std::optional<FieldOrder> given_order, const std::string& path, LogTable& table);

}  // namespace soakwright
