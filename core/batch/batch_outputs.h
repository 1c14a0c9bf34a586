// SPDX-License-Identifier: GPL-3.0-or-later
// Where the results of a batch go, and which of its files are no logs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/batch/batch_entry.h"
#include "core/batch/log_folders.h"
#include "core/problems/problem.h"

namespace soakwright {

/// The files that a batch writes; empty where there is none.
struct OutputPaths {
  std::string json, csv;
  std::string reports;  ///< a folder
};

/// Beside the first output that is a file; empty where none is.
std::string journal_path(const OutputPaths& outputs);

/// Takes earlier results of a batch out of the logs: those of other names by how they begin, those that are
/// written now by their name. Returns the problem where a file that is no such result would be written over.
std::optional<Problem> leave_out_outputs(const OutputPaths& outputs, FolderContents& contents,
                                         Problems& notes);

/// A file that is read for an entry, or the procedure, and is an output as well.
std::optional<Problem> output_among_inputs(const OutputPaths& outputs, const std::string& procedure,
                                           const std::vector<BatchEntry>& entries);

}  // namespace soakwright
