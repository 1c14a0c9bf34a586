// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/previous_records.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/evaluate/evaluation.h"
#include "core/evaluate/suspect_findings.h"
#include "core/phases/course.h"
#include "core/previous_record_problems.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "core/record/clock/same_readings.h"
#include "core/record/record_file.h"

namespace soakwright {
namespace {

using previous_record_problems::NamedAt;

/// This job for an earlier log: what was heated and where the thermocouples sat, and nothing that was said
/// about this log.
Job without_this_log(const Job& job) {
  Job earlier = job;
  earlier.exclusions.clear();
  earlier.confirmations.clear();
  earlier.periods.clear();
  earlier.remarks.clear();
  earlier.previous_records.clear();
  earlier.time_range.reset();
  earlier.hydrogen.reset();
  earlier.qualified.reset();
  earlier.reading = {};
  earlier.reading.dates = job.reading.dates;
  return earlier;
}

Result<Job> job_of_previous(const Job& job, const PreviousRecordEntry& entry, const PreviousFiles* files) {
  if (!entry.job) return without_this_log(job);
  const std::string path = files != nullptr ? files->job : named_path(job, *entry.job);
  auto read = read_job(path);
  if (!read) return with_place_in_job(read.problems(), job, path, "job", entry.line);
  const Job& found = read.value();
  if (!found.previous_records.empty()) return previous_record_problems::job_with_previous_records(found.file);
  if (found.weld != job.weld)
    return previous_record_problems::job_of_other_weld(found.file, found.weld, job.weld);
  for (const WeldEntry& weld : job.welds)
    if (std::none_of(found.welds.begin(), found.welds.end(),
                     [&](const WeldEntry& other) { return other.number == weld.number; }))
      return previous_record_problems::job_without_weld(found.file, weld.number);
  return read;
}

/// Its own job may lack what the procedure needs, as the job of the last record may.
Problems clashes_of(const PreviousRecord& one, const Procedure& procedure) {
  Problems clashes = check_compatibility(procedure, one.job.get());
  return clashes.empty() ? check_record(*one.record, procedure, one.job.get()) : clashes;
}

/// Where a record is not over before the next begins; both show dates.
bool runs_into(const Record& record, const Record& next) {
  return !(*record.local_time(record.times_s.back()) < *next.local_time(next.times_s.front()));
}

/// Why nobody knows the record's place in time; nullopt if it is known.
std::optional<Problem> missing_date(const Record& record, const NamedAt& at) {
  switch (record.clock.kind()) {
    case RecorderClock::Kind::dated:
      return std::nullopt;
    case RecorderClock::Kind::time_of_day:
      return previous_record_problems::without_date(at, record.file);
    case RecorderClock::Kind::elapsed:
      break;
  }
  return previous_record_problems::without_start(at, record.file);
}

/// The record at `index` of `earlier`, in its place before the others and `last`.
std::optional<Problem> out_of_place(const std::vector<PreviousRecord>& earlier, std::size_t index,
                                    const Record& last, const NamedAt& at) {
  const Record& record = *earlier[index].record;
  const Record& next = index + 1 == earlier.size() ? last : *earlier[index + 1].record;
  const Record* same = same_readings(record, last) ? &last : nullptr;
  for (std::size_t other = 0; other < index && same == nullptr; ++other)
    if (same_readings(record, *earlier[other].record)) same = earlier[other].record.get();
  if (same != nullptr) return previous_record_problems::same_readings(at, record.file, same->file);
  if (auto undated = missing_date(record, at)) return undated;
  if (auto undated = missing_date(next, at)) return undated;
  if (!runs_into(record, next)) return std::nullopt;
  return previous_record_problems::not_over(at, {record.file, record.moment_text(record.times_s.back())},
                                            {next.file, next.moment_text(next.times_s.front())});
}

}  // namespace

Result<std::vector<PreviousRecord>> read_previous_records(const Analysis& analysis, const Request& request,
                                                          const Watch& watch) {
  std::vector<PreviousRecord> earlier;
  const Job* job = analysis.job.get();
  const std::size_t named = job == nullptr ? 0 : job->previous_records.size();
  if (request.previous_files && request.previous_files->size() != named)
    return previous_record_problems::other_number_of_files(request.job, named,
                                                           request.previous_files->size());
  if (named == 0) return earlier;
  Problems problems;
  for (std::size_t i = 0; i < job->previous_records.size(); ++i) {
    const PreviousRecordEntry& entry = job->previous_records[i];
    const PreviousFiles* files = request.previous_files ? &(*request.previous_files)[i] : nullptr;
    auto own = job_of_previous(*job, entry, files);
    if (!own) {
      problems.insert(problems.end(), own.problems().begin(), own.problems().end());
      continue;
    }
    PreviousRecord one;
    one.cycle = cycle_of_previous(*job, i);
    one.job = std::make_shared<const Job>(std::move(own).value());
    const std::string path = files != nullptr ? files->log : named_path(*job, entry.log);
    auto record = read_record(path, one.job.get(), request.dates, {{}, watch.cancelled});
    if (watch.stopped()) return Problems{};
    if (!record) {
      const Problems said = with_place_in_job(record.problems(), *job, path, "log", entry.line);
      problems.insert(problems.end(), said.begin(), said.end());
      continue;
    }
    one.record = std::move(record).value();
    one.log_path = path;
    one.course = std::make_shared<const Course>(course_of(*one.record));
    const Problems clashes = clashes_of(one, *analysis.procedure);
    problems.insert(problems.end(), clashes.begin(), clashes.end());
    earlier.push_back(std::move(one));
  }
  if (!problems.empty()) return problems;

  for (std::size_t i = 0; i < earlier.size(); ++i)
    if (auto problem = out_of_place(earlier, i, *analysis.record, {job->file, job->previous_records[i].line}))
      problems.push_back(*std::move(problem));
  if (!problems.empty()) return problems;
  return earlier;
}

Problems check_previous_records(const Analysis& analysis, const Procedure& procedure) {
  Problems problems;
  for (const PreviousRecord& one : analysis.previous_records) {
    const Problems clashes = clashes_of(one, procedure);
    problems.insert(problems.end(), clashes.begin(), clashes.end());
  }
  return problems;
}

void evaluate_previous_records(Analysis& analysis) {
  for (PreviousRecord& one : analysis.previous_records) {
    one.ground = prepared_traces_for(*one.record, *analysis.procedure, one.ground,
                                     unmeasured_times(*one.record, *one.course));
    Verdicts verdicts = evaluate(*one.record, *analysis.procedure, one.job.get(), *one.ground);
    note_suspects(*one.record, *one.course, verdicts);
    one.verdicts = std::make_shared<const Verdicts>(std::move(verdicts));
  }
}

std::vector<PreviousCycle> cycles_of(const std::vector<PreviousRecord>& earlier) {
  std::vector<PreviousCycle> cycles;
  cycles.reserve(earlier.size());
  for (const PreviousRecord& one : earlier)
    cycles.push_back({one.cycle, one.verdicts->requirements, one.record, one.job, one.ground});
  return cycles;
}

}  // namespace soakwright
