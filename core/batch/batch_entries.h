// SPDX-License-Identifier: GPL-3.0-or-later
// Which log goes with which job.
//
// 1. NAME.toml beside NAME.csv is its job, unless it is a procedure or a review
// 2. a job that names a log is that log's job, wherever the log is
// 3. a log that a job names as a previous record, with no job of its own, is evaluated there alone
// 4. each other log stands without a job
//
// A job without a log, one that cannot be read and a folder that cannot are entries with their problem.
#pragma once

#include <string>
#include <vector>

#include "core/batch/batch_entry.h"
#include "core/batch/log_folders.h"

namespace soakwright {

/// In no particular order; without names of reports.
std::vector<BatchEntry> entries_of(const FolderContents& contents, const std::string& procedure,
                                   Problems& notes);

/// Whether the part has the entry.
bool is_in_part(const BatchEntry& entry, const BatchPart& part);

}  // namespace soakwright
