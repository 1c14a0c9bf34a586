#include "core/previous_records.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "core/evaluate/evaluation.h"
#include "core/procedure/job_file.h"
#include "core/procedure/named_path.h"
#include "core/record/record_file.h"

namespace soakwright {
namespace {

/// This job for an earlier log: what was heated and where the thermocouples sat, and nothing that was said
/// about this log.
Job without_this_log(const Job& job) {
  Job earlier = job;
  earlier.exclusions.clear();
  earlier.periods.clear();
  earlier.remarks.clear();
  earlier.previous_records.clear();
  earlier.time_range.reset();
  earlier.reading = {};
  earlier.reading.dates = job.reading.dates;
  return earlier;
}

Result<Job> job_of_previous(const Job& job, const PreviousRecordEntry& entry) {
  if (!entry.job) return without_this_log(job);
  const std::string path = named_path(job, *entry.job);
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

/// A hold that adds up is evaluated over all records; what else is asked of it would be evaluated on the last
/// alone.
Problems limits_refused(const Job& job, const Procedure& procedure) {
  Problems problems;
  for (const Stage& stage : procedure.stages) {
    const auto* hold = std::get_if<HoldStage>(&stage.asked);
    if (hold == nullptr || hold->count != HoldStage::Count::accumulated) continue;
    const char* key = hold->time_max_s      ? "time_max"
                      : hold->tempering_min ? "tempering_min"
                      : hold->tempering_max ? "tempering_max"
                                            : nullptr;
    if (key == nullptr) continue;
    problems.push_back(
        {ProblemKind::bad_input, job.file, job.previous_records.front().line,
         fmt::format(
             "stage {} of the procedure asks for `{}`, which cannot be evaluated over several records "
             "yet",
             stage.number, key),
         "take the key out of a hold that adds up over records, or evaluate each record by itself"});
  }
  return problems;
}

/// Where a record is not over before the next begins; both need a clock.
bool runs_into(const Record& record, const Record& next) {
  const auto end = record.local_time(record.times_s.back());
  return end && next.start && !(*end < *next.start);
}

}  // namespace

Result<std::vector<PreviousRecord>> read_previous_records(const Analysis& analysis,
                                                          std::optional<DateOrder> dates,
                                                          const Watch& watch) {
  std::vector<PreviousRecord> earlier;
  const Job* job = analysis.job.get();
  if (job == nullptr || job->previous_records.empty()) return earlier;
  Problems problems = limits_refused(*job, *analysis.procedure);  // before logs are read for nothing
  for (std::size_t i = 0; i < job->previous_records.size(); ++i) {
    const PreviousRecordEntry& entry = job->previous_records[i];
    auto own = job_of_previous(*job, entry);
    if (!own) {
      problems.insert(problems.end(), own.problems().begin(), own.problems().end());
      continue;
    }
    PreviousRecord one;
    one.cycle = cycle_of_previous(*job, i);
    one.job = std::make_shared<const Job>(std::move(own).value());
    const std::string path = named_path(*job, entry.log);
    auto record = read_record(path, one.job.get(), dates, {{}, watch.cancelled});
    if (watch.stopped()) return Problems{};
    if (!record) {
      const Problems said = with_place_in_job(record.problems(), *job, path, "log", entry.line);
      problems.insert(problems.end(), said.begin(), said.end());
      continue;
    }
    one.record = std::move(record).value();
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
    bool twice = record.sha256 == analysis.record->sha256;
    for (std::size_t other = 0; other < i; ++other)
      twice = twice || record.sha256 == earlier[other].record->sha256;
    if (twice)
      complain(fmt::format("{} holds the same bytes as another of the job's logs", record.file),
               "name each record once: its hold would be counted twice");
    else if (runs_into(record, next))
      complain(
          fmt::format("{} is not over before {} begins: its last row is at {}, the first of the other at {}",
                      record.file, next.file, record.local_time(record.times_s.back())->iso(),
                      next.start->iso()),
          "list the records in the order in which they were run; time that both show would be counted twice");
  }
  if (!problems.empty()) return problems;
  return earlier;
}

Problems check_previous_records(const Analysis& analysis, const Procedure& procedure) {
  if (analysis.previous_records.empty()) return {};
  Problems problems = limits_refused(*analysis.job, procedure);
  for (const PreviousRecord& one : analysis.previous_records) {
    const Problems clashes = check_record(*one.record, procedure, one.job.get());
    problems.insert(problems.end(), clashes.begin(), clashes.end());
  }
  return problems;
}

void evaluate_previous_records(Analysis& analysis) {
  for (PreviousRecord& one : analysis.previous_records) {
    one.ground = prepared_traces_for(*one.record, *analysis.procedure, one.ground);
    one.verdicts = std::make_shared<const Verdicts>(
        evaluate(*one.record, *analysis.procedure, one.job.get(), *one.ground));
  }
}

std::vector<PreviousCycle> cycles_of(const std::vector<PreviousRecord>& earlier) {
  std::vector<PreviousCycle> cycles;
  cycles.reserve(earlier.size());
  for (const PreviousRecord& one : earlier) cycles.push_back({one.cycle, one.verdicts->requirements});
  return cycles;
}

}  // namespace soakwright
