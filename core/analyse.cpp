// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse.h"

#include <utility>

#include "core/evaluate/band_notes.h"
#include "core/evaluate/evaluation.h"
#include "core/evaluate/suspect_findings.h"
#include "core/phases/course.h"
#include "core/previous_records.h"
#include "core/problems/caught.h"
#include "core/procedure/job/import_problems.h"
#include "core/procedure/job/import_texts.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "core/procedure/procedure_file.h"
#include "core/record/record_file.h"
#include "core/report/review_check.h"
#include "core/request_problems.h"

namespace soakwright {
namespace {

/// What the user asked for, read from the TOML files; the log is still to come.
struct InputFiles {
  std::string log;
  std::shared_ptr<const Job> job;
  std::shared_ptr<const Procedure> procedure;
  std::shared_ptr<const Review> review;
  Problems problems;

  template <typename T>
  std::shared_ptr<const T> take(Result<T>&& read) {
    if (read) return std::make_shared<const T>(std::move(read).value());
    problems.insert(problems.end(), read.problems().begin(), read.problems().end());
    return nullptr;
  }
};

/// An option wins over the file that the job names.
std::string named_file(const std::string& option, const Job* job, std::optional<std::string> Job::*in_job) {
  if (!option.empty() || job == nullptr || !(job->*in_job)) return option;
  return named_path(*job, *(job->*in_job));
}

InputFiles read_job_and_log_name(const Request& request) {
  InputFiles inputs;
  if (request.job_text)
    inputs.job = inputs.take(parse_job(*request.job_text, request.job));
  else if (!request.job.empty())
    inputs.job = inputs.take(read_job(request.job));
  inputs.log = named_file(request.log, inputs.job.get(), &Job::log);
  // With a job that cannot be read, nobody knows whether it names a log.
  if (inputs.log.empty() && inputs.problems.empty())
    inputs.problems.push_back(request_problems::no_log(request.job));
  return inputs;
}

void read_procedure_and_review(const Request& request, InputFiles& inputs) {
  const std::string path = named_file(request.procedure, inputs.job.get(), &Job::procedure);
  if (request.procedure_text) {
    inputs.procedure = inputs.take(parse_procedure(*request.procedure_text, path));
  } else if (!path.empty()) {
    auto procedure = read_procedure(path);
    if (!procedure && request.procedure.empty())
      procedure =
          with_place_in_job(procedure.problems(), *inputs.job, path, "procedure", inputs.job->procedure_line);
    inputs.procedure = inputs.take(std::move(procedure));
  } else if (request.job.empty() || inputs.job) {
    inputs.problems.push_back(request_problems::no_procedure(request.job));
  }
  if (!request.review.empty()) inputs.review = inputs.take(read_review(request.review));
  if (!inputs.problems.empty()) return;
  inputs.problems = check_compatibility(*inputs.procedure, inputs.job.get());
}

/// Shares of the work after each step, for who waits: reading takes most of it.
constexpr double kAfterReading = 0.6;
constexpr double kAfterCourse = 0.8;

bool stopped_after(const Watch& watch, double share) {
  watch.report(share);
  return watch.stopped();
}

/// Of a part of the work that takes the shares from `from` to `to` of the whole.
Watch part_of(const Watch& watch, double from, double to) {
  if (!watch.progress) return watch;
  return {[&watch, from, to](double share) { watch.report(from + (to - from) * share); }, watch.cancelled};
}

/// The log, and what it shows by itself.
Result<Analysis> record_of(const Request& request, const InputFiles& inputs, const Watch& watch) {
  const bool given = request.import != ImportChoices{};
  if (given && request.import.unlisted_off.value_or(false) &&
      (!inputs.job || inputs.job->thermocouples.empty()))
    return unlisted_without_job();
  std::optional<Job> as_given;
  if (given) as_given = with_import_choices(inputs.job.get(), request.import);
  auto record = read_record(inputs.log, as_given ? &*as_given : inputs.job.get(), request.dates,
                            part_of(watch, 0.0, kAfterReading));
  if (!record && request.log.empty())
    return with_place_in_job(record.problems(), *inputs.job, inputs.log, "log", inputs.job->log_line);
  if (!record) return record.problems();
  if (stopped_after(watch, kAfterReading)) return Problems{};
  Analysis analysis;
  analysis.record = std::move(record).value();
  analysis.course = std::make_shared<const Course>(course_of(*analysis.record));
  const std::vector<Notice> unused = unused_confirmations(*analysis.record, *analysis.course);
  if (!unused.empty()) {
    auto noticed = std::make_shared<Record>(*analysis.record);
    noticed->notices.insert(noticed->notices.end(), unused.begin(), unused.end());
    analysis.record = std::move(noticed);
  }
  analysis.job = inputs.job;
  analysis.log_path = inputs.log;
  analysis.job_text = request.job_text;
  analysis.dates = request.dates;
  if (stopped_after(watch, kAfterCourse)) return Problems{};
  return analysis;
}

/// The verdicts; or why the review does not belong to them.
Problems evaluate_into(Analysis& analysis) {
  evaluate_previous_records(analysis);
  const std::vector<PreviousCycle> earlier = cycles_of(analysis.previous_records);
  analysis.ground = prepared_traces_for(*analysis.record, *analysis.procedure, analysis.ground,
                                        unmeasured_times(*analysis.record, *analysis.course));
  Verdicts verdicts =
      evaluate(*analysis.record, *analysis.procedure, analysis.job.get(), *analysis.ground, earlier);
  note_suspects(*analysis.record, *analysis.course, verdicts);
  note_bands(*analysis.record, *analysis.procedure, analysis.job.get(), verdicts);
  analysis.verdicts = std::make_shared<const Verdicts>(std::move(verdicts));
  if (!analysis.review) return {};
  analysis.result_sha256 = result_digest(analysis);
  return check_review(analysis);
}

Result<Analysis> inspected(const Request& request, const Watch& watch) {
  if (!request.review.empty()) return request_problems::review_without_procedure(request.review);
  const InputFiles inputs = read_job_and_log_name(request);
  if (!inputs.problems.empty()) return inputs.problems;
  auto found = record_of(request, inputs, watch);
  if (found && stopped_after(watch, 1.0)) return Problems{};
  return found;
}

Result<Analysis> checked(const Request& request, const Watch& watch) {
  InputFiles inputs = read_job_and_log_name(request);
  read_procedure_and_review(request, inputs);
  if (!inputs.problems.empty()) return inputs.problems;

  auto found = record_of(request, inputs, watch);
  if (!found) return found;
  Analysis analysis = std::move(found).value();
  analysis.procedure = inputs.procedure;
  analysis.review = inputs.review;
  Problems clashes = check_record(*analysis.record, *analysis.procedure, analysis.job.get());
  if (!clashes.empty()) return clashes;
  auto earlier = read_previous_records(analysis, request, watch);
  if (!earlier) return earlier.problems();
  analysis.previous_records = std::move(earlier).value();
  if (Problems problems = evaluate_into(analysis); !problems.empty()) return problems;
  if (stopped_after(watch, 1.0)) return Problems{};
  return analysis;
}

Result<Analysis> evaluated_again(const Analysis& analysis, std::shared_ptr<const Procedure> procedure) {
  Problems clashes = check_compatibility(*procedure, analysis.job.get());
  if (clashes.empty()) clashes = check_record(*analysis.record, *procedure, analysis.job.get());
  if (clashes.empty()) clashes = check_previous_records(analysis, *procedure);
  if (!clashes.empty()) return clashes;
  Analysis again = analysis;
  again.procedure = std::move(procedure);
  if (Problems problems = evaluate_into(again); !problems.empty()) return problems;
  return again;
}

}  // namespace

Result<Analysis> inspect(const Request& request, const Watch& watch) {
  return caught(request.log, [&] { return inspected(request, watch); });
}

Result<Analysis> check(const Request& request, const Watch& watch) {
  return caught(request.log, [&] { return checked(request, watch); });
}

Result<Analysis> evaluate_again(const Analysis& analysis, std::shared_ptr<const Procedure> procedure) {
  return caught(analysis.record->file, [&] { return evaluated_again(analysis, std::move(procedure)); });
}

}  // namespace soakwright
