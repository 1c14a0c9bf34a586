// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch.h"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <mutex>
#include <system_error>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "core/analyse.h"
#include "core/batch/batch_entries.h"
#include "core/batch/batch_lines.h"
#include "core/batch/batch_outputs.h"
#include "core/batch/batch_problems.h"
#include "core/batch/batch_results.h"
#include "core/batch/file_stamp.h"
#include "core/problems/caught.h"
#include "core/report/json/result_json.h"
#include "core/system/parallel_for.h"
#include "core/system/write_problems.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

/// All that the texts of the outputs depend on besides the files of each record.
std::string settings_of(const BatchRequest& request) {
  std::string text =
      std::string(SOAKWRIGHT_VERSION) + '\n' + request.procedure + '\n' + request.reports + '\n';
  for (const int setting : {request.dates ? static_cast<int>(*request.dates) : -1,
                            request.unit ? static_cast<int>(*request.unit) : -1,
                            request.json.empty() && !request.json_to_caller ? 0 : 1,
                            request.csv.empty() && !request.csv_to_caller ? 0 : 1})
    text += std::to_string(setting) + ' ';
  for (const auto& [key, value] : request.import) text += '\n' + key + '=' + value;
  return text;
}

/// What may be otherwise when the batch goes on, although the files of the record are the same.
bool may_pass(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& problem) {
    return problem.kind != ProblemKind::bad_input && problem.kind != ProblemKind::usage;
  });
}

class BatchRun {
 public:
  BatchRun(const BatchPlan& plan, const BatchRequest& request, const BatchWatch& watch)
      : plan_(plan), request_(request), watch_(watch), codes_(plan.entries.size(), -1) {
    progress_.records = plan.entries.size();
    for (const BatchEntry& entry : plan.entries) progress_.bytes += entry.bytes;
  }

  Result<BatchProgress> done() {
    auto import = import_choices_of(request_.import);
    if (!import) return import.problems();
    import_ = std::move(import).value();
    if (Problems problems = open(); !problems.empty()) return problems;
    take_from_journal();
    give_out();
    if (!stop_) evaluate_rest();
    if (stop_) return *stop_;
    if (progress_.finished == progress_.records)
      if (auto problem = results_->finish()) return *std::move(problem);
    progress_.exit_code = batch_exit_code(codes_);
    return progress_;
  }

 private:
  Problems open() {
    const OutputPaths& outputs = plan_.outputs;
    if (!outputs.reports.empty()) {
      std::error_code error;
      fs::create_directories(outputs.reports, error);
      if (error) return {cannot_write(outputs.reports, error.value())};
    }
    const std::string path = journal_path(outputs);
    auto journal = BatchJournal::open(path, settings_of(request_), request_.resume);
    if (!journal) return journal.problems();
    note_journal(path, journal.value().found());
    ResultSink json, csv;
    for (auto [sink, file, to_caller, caller] :
         {std::tuple{&json, &outputs.json, request_.json_to_caller, &watch_.json},
          std::tuple{&csv, &outputs.csv, request_.csv_to_caller, &watch_.csv}}) {
      if (to_caller) sink->caller = *caller;
      if (file->empty()) continue;
      auto opened = GrowingFile::open(*file);
      if (!opened) return opened.problems();
      sink->file.emplace(std::move(opened).value());
    }
    const bool table = csv.file || csv.caller;
    if (table)
      if (auto problem = csv.write(csv_header())) return {*std::move(problem)};
    results_.emplace(std::move(journal).value(), std::move(json), std::move(csv), plan_.entries.size());
    return {};
  }

  void note_journal(const std::string& path, BatchJournal::Found found) const {
    if (!watch_.note || found == BatchJournal::Found::nothing) return;
    if (!request_.resume)
      watch_.note(journal_dropped(path));
    else if (found == BatchJournal::Found::other_batch)
      watch_.note(journal_of_other_batch(path));
    else if (found == BatchJournal::Found::damaged_end)
      watch_.note(journal_damaged(path));
  }

  [[nodiscard]] std::string report_path(const BatchEntry& entry) const {
    return (fs::path(request_.reports) / entry.report).string();
  }

  /// The latest entry of each record counts, if its files are as they were.
  void take_from_journal() {
    std::unordered_map<std::string, const BatchJournal::Kept*> kept;
    for (const BatchJournal::Kept& one : results_->journal().kept()) kept[one.key] = &one;
    for (std::size_t i = 0; i < plan_.entries.size(); ++i) {
      const BatchEntry& entry = plan_.entries[i];
      const auto found = kept.find(line_head(entry));
      const bool same = found != kept.end() && !found->second->again && entry.problems.empty() &&
                        found->second->stamp == stamp_of(entry.files) && report_is_there(entry);
      if (!same) {
        waiting_.push_back(i);
        continue;
      }
      const auto old = results_->journal().read(found->second->place);
      if (!old) {
        waiting_.push_back(i);
        continue;
      }
      results_->keep(i, found->second->place);
      count(i, old.value().row);
      ++progress_.from_journal;
      progress_.bytes_from_journal += entry.bytes;
    }
  }

  [[nodiscard]] bool report_is_there(const BatchEntry& entry) const {
    std::error_code error;
    return request_.reports.empty() || fs::is_regular_file(report_path(entry), error);
  }

  void count(std::size_t record, const BatchRow& row) {
    ++progress_.finished;
    progress_.bytes_finished += plan_.entries[record].bytes;
    codes_[record] = row.exit_code;
    count_row(row, progress_);
  }

  void evaluate_rest() {
    const std::size_t workers = std::min(request_.workers == 0 ? machine_threads() : request_.workers,
                                         std::max<std::size_t>(waiting_.size(), 1));
    const std::size_t cores_each =
        std::max<std::size_t>(1, (request_.workers == 0 ? machine_threads() : request_.workers) / workers);
    parallel_for_on(workers, waiting_.size(), [&](std::size_t i) {
      if (ended()) return;
      const LoopThreadLimit limit(cores_each);
      const std::size_t record = waiting_[i];
      const JournalEntry entry = evaluated_or_fault(plan_.entries[record]);
      const std::lock_guard<std::mutex> lock{mutex_};
      if (ended()) return;
      if (auto problem = results_->add(record, entry)) {
        stop_ = std::move(problem);
        ended_ = true;
        return;
      }
      count(record, entry.row);
      give_out();
      if (watch_.progress) watch_.progress(progress_);
    });
  }

  [[nodiscard]] bool ended() const {
    return ended_ || (watch_.cancelled != nullptr && watch_.cancelled->load(std::memory_order_relaxed));
  }

  void give_out() {
    stop_ = results_->give_out(watch_.row);
    if (stop_) ended_ = true;
  }

  /// Lack of memory for one record's result is this record's problem alone.
  JournalEntry evaluated_or_fault(const BatchEntry& entry) const {
    const std::string stamp = stamp_of(entry.files);  // before reading: what changes meanwhile is seen later
    JournalEntry out;
    try {
      out = evaluated(entry);
    } catch (...) {
      out = told({entry, nullptr, nullptr, false, {caught_problem(entry.log)}});
    }
    out.key = line_head(entry);
    out.stamp = stamp;
    return out;
  }

  JournalEntry evaluated(const BatchEntry& entry) const {
    RecordOutcome outcome{entry, nullptr, nullptr, false, entry.problems};
    std::optional<Analysis> analysis;
    std::string result;
    if (entry.problems.empty()) {
      Request one;
      one.log = entry.log;
      one.procedure = request_.procedure;
      one.job = entry.job;
      one.dates = request_.dates;
      one.import = import_;
      auto found = check(one);
      if (found)
        analysis = std::move(found).value();
      else
        outcome.problems = found.problems();
    }
    if (analysis) {
      outcome.analysis = &*analysis;
      result = result_json(*analysis);
      outcome.result = &result;
      if (!request_.reports.empty()) outcome.problems = report_problems(entry, result);
      outcome.report_written = !request_.reports.empty() && outcome.problems.empty();
    }
    return told(outcome);
  }

  [[nodiscard]] JournalEntry told(const RecordOutcome& outcome) const {
    JournalEntry out;
    out.again = may_pass(outcome.problems);
    out.row = row_of(outcome, request_.unit.value_or(TemperatureUnit::celsius));
    if (!request_.json.empty() || request_.json_to_caller) out.json = json_line(outcome);
    if (!request_.csv.empty() || request_.csv_to_caller) out.csv = csv_lines(outcome);
    return out;
  }

  Problems report_problems(const BatchEntry& entry, const std::string& result) const {
    const std::string path = report_path(entry);
    std::error_code error;
    fs::create_directories(fs::path(path).parent_path(), error);
    if (error) return {cannot_write(path, error.value())};
    const auto problem = watch_.write_report(entry, result, path);
    return problem ? Problems{*problem} : Problems{};
  }

  const BatchPlan& plan_;
  const BatchRequest& request_;
  const BatchWatch& watch_;
  ImportChoices import_;
  std::optional<BatchResults> results_;
  std::vector<std::size_t> waiting_;  ///< records that are not in the journal
  std::vector<int> codes_;
  BatchProgress progress_;
  std::mutex mutex_;
  std::optional<Problem> stop_;
  std::atomic<bool> ended_{false};
};

}  // namespace

int batch_exit_code(const std::vector<int>& codes) {
  int worst = 0;
  for (const int code : codes) {
    if (code == 1) return 1;
    const bool failed = code > 2;
    if ((failed && worst <= 2) || (code == 2 && worst == 0)) worst = code;
  }
  return worst;
}

void count_row(const BatchRow& row, BatchProgress& progress) {
  const bool failed = !row.problems.empty();
  progress.failed += failed && row.verdict != Verdict::not_met ? 1 : 0;
  progress.met += row.verdict == Verdict::met && !failed ? 1 : 0;
  progress.not_met += row.verdict == Verdict::not_met ? 1 : 0;
  progress.inconclusive += row.verdict == Verdict::inconclusive && !failed ? 1 : 0;
}

Result<BatchProgress> run_batch(const BatchPlan& plan, const BatchRequest& request, const BatchWatch& watch) {
  return caught({}, [&] { return BatchRun(plan, request, watch).done(); });
}

}  // namespace soakwright
