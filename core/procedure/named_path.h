// SPDX-License-Identifier: GPL-3.0-or-later
// Files that a job names: the one way from what is written in the job to a path.
#pragma once

#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"

namespace soakwright {

/// `written` counts from the folder of the job's file; an absolute path stays as it is.
std::string named_path(const Job& job, const std::string& written);

/// Every file that the job names, as named_path() gives it: log, procedure, the company's picture, previous
/// records and their jobs.
std::vector<std::string> files_named_by(const Job& job);

/// Says beside each problem of a file that cannot be opened which line of the job names the file.
Problems with_place_in_job(Problems problems, const Job& job, const std::string& path, const std::string& key,
                           std::size_t line);

}  // namespace soakwright
