// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/previous_records.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "core/evaluate/evaluation.h"
#include "core/evaluate/suspect_findings.h"
#include "core/phases/course.h"
#include "core/previous_files_errors.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "core/record/clock/same_readings.h"
#include "core/record/record_file.h"

namespace soakwright {
namespace {

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
  const auto refuse = [&](std::string what, std::string help) {
    return Problems{{ProblemKind::bad_input, found.file, 0, std::move(what), std::move(help)}};
  };
  if (!found.previous_records.empty())
    return refuse("a previous record's job names previous records itself",
                  "name all of them, in order, in the job of the last one");
  if (found.weld != job.weld)
    return refuse(fmt::format("this job is for weld {}, and the one that names it for {}",
                              found.weld.value_or("(none)"), job.weld.value_or("(none)")),
                  "give both the same `weld`, or take the previous record out of the job");
  for (const WeldEntry& weld : job.welds)
    if (std::none_of(found.welds.begin(), found.welds.end(),
                     [&](const WeldEntry& other) { return other.number == weld.number; }))
      return refuse(
          fmt::format("weld {} is not in it, and is in the job that names it as a previous record's",
                      weld.number),
          "list the weld in both, or evaluate it in a job of its own");
  return read;
}

/// Where a record is not over before the next begins; both show dates.
bool runs_into(const Record& record, const Record& next) {
  return !(*record.local_time(record.times_s.back()) < *next.local_time(next.times_s.front()));
}

std::string first_moment(const Record& record) { return record.moment_text(record.times_s.front()); }
std::string last_moment(const Record& record) { return record.moment_text(record.times_s.back()); }

/// Of a record whose place in time nobody knows; empty where it is known.
std::string missing_date(const Record& record) {
  switch (record.clock.kind()) {
    case RecorderClock::Kind::dated:
      return {};
    case RecorderClock::Kind::time_of_day:
      return "give the date of its first row, `date = 2031-04-02`, in [import] of its job";
    case RecorderClock::Kind::elapsed:
      break;
  }
  return "give the moment of its elapsed time 0, `start = 2031-04-02T06:00:00`, in [import] of its job";
}

}  // namespace

Result<std::vector<PreviousRecord>> read_previous_records(const Analysis& analysis, const Request& request,
                                                          const Watch& watch) {
  std::vector<PreviousRecord> earlier;
  const Job* job = analysis.job.get();
  const std::size_t named = job == nullptr ? 0 : job->previous_records.size();
  if (request.previous_files && request.previous_files->size() != named)
    return other_number_of_previous_files(request.job, named, request.previous_files->size());
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
    Problems clashes = check_record(*one.record, *analysis.procedure, one.job.get());
    problems.insert(problems.end(), clashes.begin(), clashes.end());
    earlier.push_back(std::move(one));
  }
  if (!problems.empty()) return problems;

  for (std::size_t i = 0; i < earlier.size(); ++i) {
    const Record& record = *earlier[i].record;
    const bool last = i + 1 == earlier.size();
    const Record& next = last ? *analysis.record : *earlier[i + 1].record;
    const auto complain = [&](std::string what, std::string help) {
      problems.push_back({ProblemKind::bad_input, job->file, job->previous_records[i].line, std::move(what),
                          std::move(help)});
    };
    const Record* same = same_readings(record, *analysis.record) ? analysis.record.get() : nullptr;
    for (std::size_t other = 0; other < i && same == nullptr; ++other)
      if (same_readings(record, *earlier[other].record)) same = earlier[other].record.get();
    const Record& undated = missing_date(record).empty() ? next : record;
    if (same != nullptr)
      complain(fmt::format("{} has the same readings as {}", record.file, same->file),
               "name each record once: its hold would be counted twice");
    else if (const std::string help = missing_date(undated); !help.empty())
      complain(fmt::format("{} has no date, so that its place in time is not known", undated.file), help);
    else if (runs_into(record, next))
      complain(
          fmt::format("{} is not over before {} begins: its last row is at {}, the first of the other at {}",
                      record.file, next.file, last_moment(record), first_moment(next)),
          "list the records in the order in which they were run; time that both show would be counted twice");
  }
  if (!problems.empty()) return problems;
  return earlier;
}

Problems check_previous_records(const Analysis& analysis, const Procedure& procedure) {
  Problems problems;
  for (const PreviousRecord& one : analysis.previous_records) {
    const Problems clashes = check_record(*one.record, procedure, one.job.get());
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
