// SPDX-License-Identifier: GPL-3.0-or-later
// A report of a batch, made by a process of its own: the report writer works on one thread of one process,
// and what ends it there ends nothing else.
#pragma once

#include <optional>
#include <string>

#include "core/batch.h"
#include "core/problems/problem.h"

namespace soakwright::cli {

/// Runs `soakwright check` for the entry. Its result must be `result` to the byte: else the report is of
/// other files than the result, is removed, and the problem says so.
std::optional<Problem> write_report_in_child(const BatchRequest& request, const BatchEntry& entry,
                                             const std::string& result, const std::string& path);

}  // namespace soakwright::cli
