// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/batch_outputs.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <system_error>

#include "core/batch/batch_lines.h"
#include "core/batch/batch_problems.h"
#include "core/batch/file_stamp.h"
#include "core/system/atomic_file.h"
#include "core/system/growing_file.h"

namespace soakwright {
namespace {

constexpr std::string_view kJournalEnding = ".journal";

/// Outputs that are or will be regular files.
std::vector<std::string> output_files(const OutputPaths& outputs) {
  std::vector<std::string> files;
  for (const std::string& path : {outputs.json, outputs.csv})
    if (!path.empty() && !is_device_or_pipe(path)) files.push_back(path);
  return files;
}

bool is_own_output(const std::string& path) {
  std::error_code error;  // a pipe would hold the program up
  if (!std::filesystem::is_regular_file(path, error)) return false;
  std::ifstream file(path, std::ios::binary);
  std::string first(512, '\0');
  file.read(first.data(), static_cast<std::streamsize>(first.size()));
  first.resize(static_cast<std::size_t>(std::max<std::streamsize>(file.gcount(), 0)));
  return begins_like_output(first);
}

/// Outputs and their part files, as far as they are there.
std::set<FileIdentity> identities_of(const std::vector<std::string>& outputs) {
  std::set<FileIdentity> identities;
  for (const std::string& path : outputs)
    for (const std::string& one : {path, part_file_of(path)})
      if (const auto identity = identity_of(one)) identities.insert(*identity);
  return identities;
}

}  // namespace

std::string journal_path(const OutputPaths& outputs) {
  const std::vector<std::string> files = output_files(outputs);
  if (!files.empty()) {
    const std::string place = written_place(files.front());
    return place.empty() ? place : place + std::string(kJournalEnding);
  }
  if (outputs.reports.empty()) return {};
  return outputs.reports + (outputs.reports.back() == '/' ? "" : "/") + "batch" + std::string(kJournalEnding);
}

std::optional<Problem> leave_out_outputs(const OutputPaths& outputs, FolderContents& contents,
                                         Problems& notes) {
  const std::set<FileIdentity> written = identities_of(output_files(outputs));
  std::optional<Problem> clash;
  const auto is_output = [&](const FoundFile& file) {
    const auto identity = identity_of(file.path);
    const bool now_written = identity && written.contains(*identity);
    const bool own = is_own_output(file.path);
    if (now_written && !own && size_of(file.path) > 0 && !clash) clash = output_is_an_input(file.path);
    if (own || now_written) notes.push_back(own_output_left_out(file.path));
    return own || now_written;
  };
  std::erase_if(contents.logs, is_output);
  return clash;
}

std::optional<Problem> output_among_inputs(const OutputPaths& outputs, const std::string& procedure,
                                           const std::vector<BatchEntry>& entries) {
  const std::vector<std::string> files = output_files(outputs);
  const std::set<FileIdentity> written = identities_of(files);
  std::set<std::string> places;
  for (const std::string& path : files)
    if (!places.insert(written_place(path)).second) return one_file_for_two_outputs(path);
  if (written.empty()) return std::nullopt;
  const auto clashes = [&](const std::string& path) {
    const auto identity = identity_of(path);
    return identity && written.contains(*identity);
  };
  if (!procedure.empty() && clashes(procedure)) return output_is_an_input(procedure);
  for (const BatchEntry& entry : entries)
    for (const std::string& file : entry.files)
      if (clashes(file)) return output_is_an_input(file);
  return std::nullopt;
}

}  // namespace soakwright
