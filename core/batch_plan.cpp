// SPDX-License-Identifier: GPL-3.0-or-later
// Before a batch runs: which logs with which jobs, in which order, and which reports.
#include <algorithm>
#include <filesystem>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include "core/batch.h"
#include "core/batch/batch_entries.h"
#include "core/batch/batch_lines.h"
#include "core/batch/batch_outputs.h"
#include "core/batch/batch_problems.h"
#include "core/batch/log_folders.h"
#include "core/batch/report_names.h"
#include "core/problems/caught.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

OutputPaths outputs_of(const BatchRequest& request) {
  return {request.json_to_caller ? std::string{} : request.json,
          request.csv_to_caller ? std::string{} : request.csv, request.reports};
}

/// The path of a log or job without the folder that the user named, where there is but one.
std::string within(const std::string& path, const BatchRequest& request) {
  if (request.folders.size() != 1) return path;
  std::string folder = fs::path(request.folders.front()).lexically_normal().string();
  if (!folder.ends_with('/')) folder += '/';
  return path.starts_with(folder) ? path.substr(folder.size()) : path;
}

void name_reports(const BatchRequest& request, std::vector<BatchEntry>& entries) {
  std::vector<ReportSubject> subjects;
  subjects.reserve(entries.size());
  for (const BatchEntry& entry : entries)
    subjects.push_back({within(entry.log, request), within(entry.job, request)});
  std::vector<std::string> names = report_names(subjects);
  for (std::size_t i = 0; i < entries.size(); ++i) entries[i].report = std::move(names[i]);
}

void sort_by_line(std::vector<BatchEntry>& entries) {
  std::vector<std::pair<std::string, std::size_t>> order;
  order.reserve(entries.size());
  for (std::size_t i = 0; i < entries.size(); ++i) order.emplace_back(line_head(entries[i]), i);
  std::sort(order.begin(), order.end());
  std::vector<BatchEntry> sorted;
  sorted.reserve(entries.size());
  for (const auto& [head, index] : order) sorted.push_back(std::move(entries[index]));
  entries = std::move(sorted);
}

Result<BatchPlan> planned(const BatchRequest& request) {
  const OutputPaths outputs = outputs_of(request);
  if (request.resume && journal_path(outputs).empty()) return resume_without_file();
  auto contents = contents_of(request.folders);
  if (!contents) return contents.problems();
  BatchPlan plan;
  plan.outputs = outputs;
  plan.notes = contents.value().notes;
  if (auto clash = leave_out_outputs(outputs, contents.value(), plan.notes)) return *std::move(clash);
  if (!contents.value().other_endings.empty())
    plan.notes.push_back(other_endings_left_out(contents.value().other_endings));
  std::vector<BatchEntry> entries = entries_of(contents.value(), request.procedure, plan.notes);
  if (entries.empty()) return no_log_found(request.folders.front());
  if (auto clash = output_among_inputs(outputs, request.procedure, entries)) return *std::move(clash);
  name_reports(request, entries);
  plan.entries_of_all_parts = entries.size();
  std::erase_if(entries, [&](const BatchEntry& entry) { return !is_in_part(entry, request.part); });
  if (entries.empty()) plan.notes.push_back(part_is_empty());
  sort_by_line(entries);
  plan.entries = std::move(entries);
  return plan;
}

}  // namespace

BatchEntry batch_entry_of(const std::string& log, const std::string& procedure, Problems& notes) {
  FolderContents contents;
  contents.logs.push_back({log, log});
  const std::string beside = fs::path(log).replace_extension(".toml").string();
  std::error_code error;
  if (beside != log && fs::exists(beside, error)) contents.toml_files.push_back({beside, beside});
  std::vector<BatchEntry> entries = entries_of(contents, procedure, notes);
  // A job that names another log has an entry of its own, which is not asked for here.
  for (BatchEntry& entry : entries)
    if (entry.log == log) return std::move(entry);
  BatchEntry alone;
  alone.log = log;
  alone.files = {log};
  return alone;
}

Result<BatchPlan> plan_batch(const BatchRequest& request) {
  return caught({}, [&] { return planned(request); });
}

}  // namespace soakwright
