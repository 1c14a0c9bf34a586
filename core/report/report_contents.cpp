// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/report_contents.h"

#include <chrono>
#include <filesystem>
#include <system_error>
#include <utility>

#include "core/problems/caught.h"
#include "core/read/log_file_problems.h"
#include "core/read/source_file.h"
#include "core/report/attached_file_problems.h"
#include "core/report/json/result_json.h"
#include "core/units/sha256.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

std::optional<std::int64_t> modification_time(const std::string& path) {
  std::error_code error;
  const auto written = fs::last_write_time(path, error);
  if (error) return std::nullopt;
  const auto at = std::chrono::file_clock::to_sys(written).time_since_epoch();
  return std::chrono::floor<std::chrono::seconds>(at).count();
}

/// The files of one report, as they are collected.
class Collection {
 public:
  /// `sha256` is empty where nothing was evaluated from the file.
  void add(AttachedFile::Kind kind, const std::string& path, const std::string& sha256,
           std::size_t previous = 0) {
    const auto opened = SourceFile::open(path);
    if (!opened) return complain(opened.problems());
    std::string bytes(static_cast<std::size_t>(opened.value().bytes()), '\0');
    const std::ptrdiff_t got = opened.value().read_at(0, bytes.data(), bytes.size());
    if (got != static_cast<std::ptrdiff_t>(bytes.size()))
      return complain({log_file_problems::became_shorter(path)});
    const std::string expected = sha256.empty() ? sha256_hex(bytes) : sha256;
    add_bytes(kind, path, std::move(bytes), expected, previous, modification_time(path));
  }

  void add_bytes(AttachedFile::Kind kind, const std::string& path, std::string bytes,
                 const std::string& sha256, std::size_t previous = 0,
                 std::optional<std::int64_t> modified_s = std::nullopt) {
    if (sha256_hex(bytes) != sha256) return complain({changed_since_evaluated(path)});
    files.push_back({kind, previous, fs::path(path).filename().string(), std::move(bytes), modified_s});
  }

  std::vector<AttachedFile> files;
  Problems problems;

 private:
  void complain(const Problems& more) { problems.insert(problems.end(), more.begin(), more.end()); }
};

void add_previous(Collection& collection, const Analysis& analysis) {
  for (std::size_t i = 0; i < analysis.previous_records.size(); ++i) {
    const PreviousRecord& one = analysis.previous_records[i];
    collection.add(AttachedFile::Kind::previous_log, one.log_path, one.record->sha256, i);
    if (analysis.job->previous_records[i].job)
      collection.add(AttachedFile::Kind::previous_job, one.job->file, one.job->sha256, i);
  }
}

Result<ReportContents> contents_of(const Analysis& given, const ReportOptions& options) {
  using Kind = AttachedFile::Kind;
  Analysis analysis = given;
  Collection collection;
  collection.add(Kind::log, analysis.log_path, analysis.record->sha256);
  if (analysis.procedure)
    collection.add(Kind::procedure, analysis.procedure->file, analysis.procedure->sha256);
  if (analysis.job && analysis.job_text)
    collection.add_bytes(Kind::job, analysis.job->file, *analysis.job_text, analysis.job->sha256);
  else if (analysis.job)
    collection.add(Kind::job, analysis.job->file, analysis.job->sha256);
  if (analysis.review) collection.add(Kind::review, analysis.review->file, analysis.review->sha256);
  add_previous(collection, analysis);

  std::string result = result_json(analysis);
  analysis.result_sha256 = sha256_hex(result);
  collection.files.push_back({Kind::result, 0, "result.json", std::move(result), std::nullopt});
  ReportContents contents{make_report(analysis, options), {}, options, analysis.dates};
  // The report writer complains of a picture that is not there.
  std::error_code error;
  if (const std::string& picture = contents.report.company.picture; fs::is_regular_file(picture, error))
    collection.add(Kind::picture, picture, {});
  if (!collection.problems.empty()) return collection.problems;
  contents.files = std::move(collection.files);
  return contents;
}

}  // namespace

Result<ReportContents> report_contents(const Analysis& analysis, const ReportOptions& options) {
  return caught(analysis.log_path, [&] { return contents_of(analysis, options); });
}

}  // namespace soakwright
