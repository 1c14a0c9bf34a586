// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/batch_entries.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "core/batch/batch_problems.h"
#include "core/batch/file_stamp.h"
#include "core/batch/path_text.h"
#include "core/batch/report_names.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "core/procedure/toml/text_file.h"
#include "core/procedure/toml/toml_tree.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

/// A TOML file of the folders.
struct TomlFile {
  enum class Kind { job, damaged_job, other_of_ours, foreign };
  FoundFile place;
  Kind kind = Kind::foreign;
  std::optional<Job> job;
  Problems problems;
  bool used = false;
};

/// What the version line says; where the text is no TOML, what it seems to say.
TomlFile::Kind kind_of(const std::string& text) {
  const auto says = [&](const char* word) {
    return text.find(std::string{word} + " 1\"") != std::string::npos;
  };
  const auto tree = parse_toml(text, {});
  if (!tree) return says("\"job") ? TomlFile::Kind::damaged_job : TomlFile::Kind::foreign;
  for (const TomlEntry& entry : tree.value().entries) {
    if (entry.key != "soakwright") continue;
    const auto* const version = entry.value.as<std::string>();
    if (version != nullptr && version->starts_with("job")) return TomlFile::Kind::job;
    return TomlFile::Kind::other_of_ours;
  }
  return TomlFile::Kind::foreign;
}

TomlFile read_toml(const FoundFile& place) {
  TomlFile file{place, TomlFile::Kind::foreign, {}, {}};
  const auto text = read_text_file(place.path);
  if (!text) {
    // Nobody knows what it is: it may be a job.
    file.kind = TomlFile::Kind::damaged_job;
    file.problems = text.problems();
    return file;
  }
  file.kind = kind_of(text.value());
  if (file.kind == TomlFile::Kind::foreign || file.kind == TomlFile::Kind::other_of_ours) return file;
  auto job = parse_job(text.value(), place.path);
  if (job)
    file.job = std::move(job).value();
  else
    file.problems = job.problems();
  if (!file.job) file.kind = TomlFile::Kind::damaged_job;
  return file;
}

std::string without_ending(const std::string& path) { return fs::path(path).replace_extension().string(); }

class Pairing {
 public:
  Pairing(const FolderContents& contents, const std::string& procedure, Problems& notes)
      : contents_(contents), procedure_(procedure), notes_(notes), toml_(contents.toml_files.size()) {
    parallel_for(toml_.size(), [&](std::size_t i) { toml_[i] = read_toml(contents.toml_files[i]); });
    for (std::size_t i = 0; i < contents.logs.size(); ++i)
      if (const auto identity = identity_of(contents.logs[i].path)) logs_by_identity_[*identity].push_back(i);
    for (std::size_t i = 0; i < toml_.size(); ++i) by_stem_[without_ending(toml_[i].place.path)] = i;
    has_job_.resize(contents.logs.size(), false);
  }

  std::vector<BatchEntry> entries() {
    for (std::size_t log = 0; log < contents_.logs.size(); ++log) pair_with_job_beside(log);
    for (TomlFile& file : toml_)
      if (file.job && file.job->log && !file.used) pair_with_named_log(file);
    note_previous_records();
    for (std::size_t log = 0; log < contents_.logs.size(); ++log)
      if (!has_job_[log] && !is_previous(log)) add(contents_.logs[log], nullptr);
    for (const TomlFile& file : toml_) {
      if (file.used || file.kind == TomlFile::Kind::foreign || file.kind == TomlFile::Kind::other_of_ours)
        continue;
      add_alone(file.place, file.job ? Problems{job_without_log(file.place.path)} : file.problems);
    }
    for (const UnreadablePlace& one : contents_.unreadable) {
      BatchEntry entry;
      entry.log = one.place.path;
      entry.problems = {one.problem};
      entries_.push_back(std::move(entry));
    }
    return std::move(entries_);
  }

 private:
  /// Index of the found log that this path leads to; of several names the one that is written so.
  [[nodiscard]] std::optional<std::size_t> found_log(const std::string& path) const {
    const auto identity = identity_of(path);
    if (!identity) return std::nullopt;
    const auto found = logs_by_identity_.find(*identity);
    if (found == logs_by_identity_.end()) return std::nullopt;
    const std::string plain = fs::path(path).lexically_normal().string();
    for (const std::size_t log : found->second)
      if (contents_.logs[log].path == plain) return log;
    return found->second.front();
  }

  void pair_with_job_beside(std::size_t log) {
    const FoundFile& place = contents_.logs[log];
    const auto beside = by_stem_.find(without_ending(place.path));
    if (beside == by_stem_.end()) return;
    TomlFile& file = toml_[beside->second];
    if (file.kind == TomlFile::Kind::other_of_ours || file.kind == TomlFile::Kind::foreign) {
      notes_.push_back(beside_is_no_job(file.place.path));
      return;
    }
    has_job_[log] = true;
    const bool names_another = file.job && file.job->log &&
                               identity_of(named_path(*file.job, *file.job->log)) != identity_of(place.path);
    BatchEntry& entry = add(place, &file);
    if (!names_another) {
      file.used = true;
      return;
    }
    // Two logs of one name (d3.csv, d3.txt), one of which the job names: it is not the other's.
    const auto named = found_log(named_path(*file.job, *file.job->log));
    if (named && without_ending(contents_.logs[*named].path) == without_ending(place.path)) {
      entries_.pop_back();
      has_job_[log] = false;
      return;
    }
    entry.problems = {job_names_another_log(file.place.path, file.job->log_line, *file.job->log)};
  }

  void pair_with_named_log(TomlFile& file) {
    file.used = true;
    const std::string path = named_path(*file.job, *file.job->log);
    if (const auto log = found_log(path)) {
      has_job_[*log] = true;
      add(contents_.logs[*log], &file);
    } else {
      add({fs::path(path).lexically_normal().string(), *file.job->log}, &file);
    }
  }

  void note_previous_records() {
    for (const TomlFile& file : toml_) {
      if (!file.job) continue;
      for (const PreviousRecordEntry& previous : file.job->previous_records) {
        if (const auto log = found_log(named_path(*file.job, previous.log)))
          previous_of_[*log] = file.place.path;
        if (!previous.job) continue;
        const auto beside = by_stem_.find(
            without_ending(fs::path(named_path(*file.job, *previous.job)).lexically_normal().string()));
        if (beside != by_stem_.end()) toml_[beside->second].used = true;
      }
    }
  }

  bool is_previous(std::size_t log) {
    const auto found = previous_of_.find(log);
    if (found == previous_of_.end()) return false;
    notes_.push_back(part_of_another_record(contents_.logs[log].path, found->second));
    return true;
  }

  BatchEntry& add(const FoundFile& log, const TomlFile* job) {
    BatchEntry entry;
    entry.log = log.path;
    entry.part_name = log.name;
    entry.files = {log.path};
    if (job != nullptr) {
      entry.job = job->place.path;
      (entry.part_name += '\n') += job->place.name;
      entry.files.push_back(job->place.path);
    }
    if (!procedure_.empty()) entry.files.push_back(procedure_);
    if (job != nullptr && job->job)
      for (std::string& file : files_named_by(*job->job)) entry.files.push_back(std::move(file));
    entry.bytes = size_of(log.path);
    entries_.push_back(std::move(entry));
    return entries_.back();
  }

  void add_alone(const FoundFile& job, Problems problems) {
    BatchEntry entry;
    entry.job = job.path;
    entry.part_name = job.name;
    entry.files = {job.path};
    entry.problems = std::move(problems);
    entries_.push_back(std::move(entry));
  }

  const FolderContents& contents_;
  const std::string& procedure_;
  Problems& notes_;
  std::vector<TomlFile> toml_;
  std::map<FileIdentity, std::vector<std::size_t>> logs_by_identity_;
  std::map<std::string, std::size_t> by_stem_;  ///< TOML files by their path without the ending
  std::vector<bool> has_job_;
  std::map<std::size_t, std::string> previous_of_;  ///< log to the job that names it
  std::vector<BatchEntry> entries_;
};

}  // namespace

std::vector<BatchEntry> entries_of(const FolderContents& contents, const std::string& procedure,
                                   Problems& notes) {
  return Pairing(contents, procedure, notes).entries();
}

bool is_in_part(const BatchEntry& entry, const BatchPart& part) {
  return entry.part_name.empty() || name_hash(entry.part_name) % part.of == part.number - 1;
}

}  // namespace soakwright
