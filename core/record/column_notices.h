// SPDX-License-Identifier: GPL-3.0-or-later
// What a reader should know about the cells and the name of one column.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

/// Cells of a thermocouple's column that give no reading: empty, text, grouped digits, out of range.
std::vector<Notice> cell_notices(const LogColumn& column, const std::string& channel,
                                 const LineIssue& out_of_range);
/// For a column that is evaluated although its name suggests something else.
Notice unclear_name_notice(const LogColumn& column, std::size_t names_line);
/// One for each name that several columns have.
std::vector<Notice> duplicate_name_notices(const LogTable& table, std::size_t names_line);

}  // namespace soakwright
