// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/named_path.h"

#include <filesystem>
#include <utility>

#include "core/procedure/job/job_problems.h"

namespace soakwright {

std::string named_path(const Job& job, const std::string& written) {
  return (std::filesystem::path(job.file).parent_path() / written).string();
}

std::vector<std::string> files_named_by(const Job& job) {
  std::vector<std::string> files;
  for (const auto& named : {job.log, job.procedure})
    if (named) files.push_back(named_path(job, *named));
  if (job.company && job.company->picture) files.push_back(named_path(job, *job.company->picture));
  for (const PreviousRecordEntry& entry : job.previous_records) {
    files.push_back(named_path(job, entry.log));
    if (entry.job) files.push_back(named_path(job, *entry.job));
  }
  return files;
}

Problems with_place_in_job(Problems problems, const Job& job, const std::string& path, const std::string& key,
                           std::size_t line) {
  for (Problem& problem : problems) {
    if (problem.kind != ProblemKind::cannot_open || problem.file != path) continue;
    problem = job_problems::named_in_job(std::move(problem), job.file, key, line);
  }
  return problems;
}

}  // namespace soakwright
