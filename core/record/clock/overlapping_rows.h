// SPDX-License-Identifier: GPL-3.0-or-later
// Exports that overlap: rows of a time that the file has already given.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

/// Drops rows behind a step back in time that lie at or before the last time and repeat earlier rows to the
/// letter, with the notice repeat-rows. A problem where such rows differ from the earlier ones of their time,
/// but for the most part not: the lines of both.
std::optional<Problem> drop_overlapping_rows(LogTable& table, const std::string& path,
                                             std::vector<Notice>& notices);

}  // namespace soakwright
