// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/output_paths.h"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "app/modules/one_file.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"

namespace soakwright::cli {
namespace {

/// Everything that will be read. A job that cannot be read names nothing; the work itself says what is wrong
/// with it.
std::vector<std::string> inputs_of(const Request& request) {
  std::vector<std::string> inputs{request.log, request.procedure, request.job, request.review};
  if (request.job.empty()) return inputs;
  const auto job = read_job(request.job);
  if (!job) return inputs;
  const std::vector<std::string> named = files_named_by(job.value());
  inputs.insert(inputs.end(), named.begin(), named.end());
  return inputs;
}

/// A log with the job beside it, and what that names.
std::vector<std::string> inputs_beside(const std::string& log) {
  Problems notes;
  return batch_entry_of(log, {}, notes).files;
}

}  // namespace

std::optional<Problem> clash_of_outputs(const Arguments& arguments) {
  const auto file = [](const std::string& path) { return path == "-" ? std::string{} : path; };
  const std::array<std::pair<const char*, std::string>, 6> outputs{
      {{"--json", file(arguments.json)},
       {"--csv", file(arguments.csv)},
       {"--readings", file(arguments.readings)},
       {"--out", arguments.draft.out == "-" ? std::string{} : arguments.draft.out},
       {"--report", arguments.report},
       {"--chart", arguments.chart}}};
  std::vector<std::string> inputs = inputs_of(arguments.request);
  for (const std::string& log : arguments.logs)
    for (const std::string& input : inputs_beside(log)) inputs.push_back(input);
  for (std::size_t i = 0; i < outputs.size(); ++i) {
    const auto& [option, path] = outputs[i];
    if (path.empty()) continue;
    for (const std::string& input : inputs)
      if (!input.empty() && modules::one_file(path, input))
        return Problem{ProblemKind::usage, path, 0, "this is a file to be read, and would be written over",
                       "name another file"};
    for (std::size_t j = 0; j < i; ++j)
      if (!outputs[j].second.empty() && modules::one_file(outputs[j].second, path))
        return Problem{ProblemKind::usage, path, 0,
                       std::string("named for both ") + outputs[j].first + " and " + option,
                       "give each a file of its own"};
  }
  return std::nullopt;
}

}  // namespace soakwright::cli
