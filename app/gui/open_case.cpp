// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/open_case.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "app/gui/texts/change_words.h"
#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "core/procedure/procedure_file.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {
namespace {

/// A path that the job names, for people: without `..` where that is not needed.
QString named_by(const Job& job, const std::optional<std::string>& written) {
  if (!written) return {};
  return QDir::cleanPath(QFile::decodeName(QByteArray::fromStdString(named_path(job, *written))));
}

/// The bytes of the file's name, as the file system has them.
Request request_for(const OpenFiles& files) {
  Request request;
  request.log = path_bytes(files.log);
  request.procedure = path_bytes(files.procedure);
  request.job = path_bytes(files.job);
  request.review = path_bytes(files.review);
  return request;
}

void note_stamps(OpenCase& open) {
  for (const QString& path : {open.log_path, open.procedure_path, open.files.job, open.files.review})
    if (!path.isEmpty()) open.stamps[path] = FileStamp::of(path);
  if (!open.analysis.job) return;
  const Job& job = *open.analysis.job;
  for (const PreviousRecordEntry& earlier : job.previous_records)
    for (const QString& path : {named_by(job, earlier.log), named_by(job, earlier.job)})
      if (!path.isEmpty()) open.stamps[path] = FileStamp::of(path);
}

std::string name_of_procedure(const QString& path) {
  return path.isEmpty() ? unwritten_procedure_name().toStdString() : path_bytes(path);
}

/// From the draft where there is one, else from the file.
Result<Procedure> procedure_of(const QString& path, const std::optional<DraftText>& draft) {
  return draft ? parse_procedure(draft->text, name_of_procedure(path)) : read_procedure(path_bytes(path));
}

/// What there is without a log: the files are read for their own sake, so that a faulty one is refused at
/// once.
Result<OpenCase> waiting_for_a_log(OpenCase open) {
  if (open.procedure_path.isEmpty() && !open.files.draft) return open;
  auto procedure = procedure_of(open.procedure_path, open.files.draft);
  if (!procedure) return procedure.problems();
  open.analysis.procedure = std::make_shared<const Procedure>(std::move(procedure).value());
  return open;
}

}  // namespace

ReportOptions report_options(const OpenCase& open) {
  ReportOptions options;
  options.program_version = SOAKWRIGHT_VERSION;
  options.unit = open.files.unit;
  options.both_units = open.files.both_units;
  if (open.files.changes)
    for (const QString& words : change_words(*open.files.changes))
      options.unsaved.push_back(words.toStdString());
  if (open.files.draft)
    options.unsaved.push_back(
        QCoreApplication::translate("OpenCase", "changes of the procedure").toStdString());
  if (open.analysis.review && open.analysis.review->sha256.empty())
    options.unsaved.push_back(
        QCoreApplication::translate("OpenCase", "decisions of the review").toStdString());
  if (open.from_report) {
    options.paper = open.from_report->paper;
    options.company_picture = open.from_report->company_picture;
    options.unsaved = open.from_report->unsaved;
  }
  return options;
}

void say_again(OpenCase& open) {
  open.report = std::make_shared<const Report>(make_report(open.analysis, report_options(open)));
}

void prepare_to_show(OpenCase& open) {
  open.traces = trace_set(open.analysis.record);
  open.preview = std::make_shared<const LogPreview>(
      preview_of(path_bytes(open.log_path), open.analysis.record->reading.encoding.value));
  say_again(open);
  open.previous_traces.clear();
  for (const auto& record : open.report->previous_records)
    open.previous_traces.push_back(trace_set(record->chart.record));
}

std::string text_at(const QString& path) {
  QFile file(path);
  // Opening a pipe would wait for somebody who writes to it.
  return QFileInfo(path).isFile() && file.open(QIODevice::ReadOnly) ? file.readAll().toStdString()
                                                                    : std::string();
}

FileStamp FileStamp::of(const QString& path) {
  const QFileInfo info(path);
  if (!info.exists()) return {};
  return {info.lastModified(), info.size()};
}

OpenFiles files_together(const OpenFiles& kept, const OpenFiles& named, const Job* job) {
  const bool other_log = !named.log.isEmpty() && named.log != kept.log;
  const bool other_job = !named.job.isEmpty() && named.job != kept.job;
  OpenFiles files = kept;
  if (other_job && job && job->log) files.log.clear();
  if (other_job && job && job->procedure) files.procedure.clear();
  // A job that names its log speaks of that log's thermocouples: it leaves with it. A review speaks of one
  // result.
  if (other_log && named.job.isEmpty() && job && job->log) files.job.clear();
  const bool other_procedure = !named.procedure.isEmpty() && named.procedure != kept.procedure;
  if (other_log || other_job || other_procedure || named.changes || named.draft) files.review.clear();
  if (other_log || other_job) files.changes.reset();
  if (other_procedure || (other_job && job && job->procedure)) files.draft.reset();
  if (!named.log.isEmpty()) files.log = named.log;
  if (!named.procedure.isEmpty()) files.procedure = named.procedure;
  if (!named.job.isEmpty()) files.job = named.job;
  if (!named.review.isEmpty()) files.review = named.review;
  if (named.changes) files.changes = named.changes;
  if (named.draft) files.draft = named.draft;
  return files;
}

Result<OpenCase> read_case(const OpenFiles& kept, const OpenFiles& named, const Watch& watch) {
  OpenCase open;
  const QString job_path = named.job.isEmpty() ? kept.job : named.job;
  std::shared_ptr<const Job> job;
  if (!job_path.isEmpty()) {
    auto read = read_job(path_bytes(job_path));
    if (!read) return read.problems();
    job = std::make_shared<const Job>(std::move(read).value());
  }
  open.files = files_together(kept, named, job.get());
  open.log_path = open.files.log;
  open.procedure_path = open.files.procedure;
  if (!open.files.job.isEmpty()) {
    if (open.log_path.isEmpty()) open.log_path = named_by(*job, job->log);
    if (open.procedure_path.isEmpty()) open.procedure_path = named_by(*job, job->procedure);
    open.analysis.job = job;
  }
  note_stamps(open);
  const auto& draft = open.files.draft;
  if (draft && !draft->in_a_file) open.procedure_path.clear();
  open.procedure_source = draft ? draft->text : text_at(open.procedure_path);
  if (open.log_path.isEmpty()) return waiting_for_a_log(std::move(open));

  Watch reading{[&watch](double share) {
                  if (watch.progress) watch.progress(kReadingShare * share);
                },
                watch.cancelled};
  Request request = request_for(open.files);
  if (open.files.changes && !open.files.changes->empty()) {
    auto text = job_text_of(open.files.job, *open.files.changes, {}, {});
    if (!text) return text.problems();
    request.job_text = std::move(text).value();
    if (request.job.empty()) request.job = unwritten_job_name().toStdString();
    request.log = path_bytes(open.log_path);
    request.procedure = path_bytes(open.procedure_path);
  }
  if (draft) {
    request.procedure = name_of_procedure(open.procedure_path);
    request.procedure_text = draft->text;
  }
  const bool alone = open.procedure_path.isEmpty() && !draft;
  auto analysis = alone ? inspect(request, reading) : check(request, reading);
  if (!analysis) return analysis.problems();
  open.analysis = std::move(analysis).value();
  prepare_to_show(open);
  if (watch.progress) watch.progress(1.0);
  return open;
}

QString filed_procedure(const OpenCase& open) {
  if (!open.files.procedure.isEmpty() || !open.analysis.job) return open.files.procedure;
  return named_by(*open.analysis.job, open.analysis.job->procedure);
}

Result<OpenCase> evaluate_case_again(const OpenCase& open, const QString& path,
                                     const std::optional<DraftText>& draft) {
  OpenCase next = open;
  const bool other = path != filed_procedure(open);
  if (other) next.files.procedure = path;
  next.procedure_path = draft && !draft->in_a_file ? QString() : path;
  next.files.draft = draft;
  next.procedure_source = draft ? draft->text : text_at(path);
  if (other || draft) next.files.review.clear();
  auto procedure = procedure_of(next.procedure_path, draft);
  if (!procedure) return procedure.problems();
  next.analysis.procedure = std::make_shared<const Procedure>(std::move(procedure).value());
  if (!open.has_record()) {
    note_stamps(next);
    return next;
  }
  Analysis before = open.analysis;
  // A review is of the result under the procedure that it was written for.
  if (other || draft || open.files.draft) {
    before.review = nullptr;
    before.result_sha256.clear();
  }
  auto analysis = evaluate_again(before, next.analysis.procedure);
  if (!analysis) return analysis.problems();
  next.analysis = std::move(analysis).value();
  // Only the procedure was read: what changed of the other files since is still to be said.
  if (!next.procedure_path.isEmpty()) next.stamps[next.procedure_path] = FileStamp::of(next.procedure_path);
  say_again(next);
  return next;
}

namespace {

/// A path as a job in `folder` names it; empty stays empty.
std::string seen_from(const QDir& folder, const QString& path) {
  return path.isEmpty() ? std::string{}
                        : folder.relativeFilePath(QFileInfo(path).absoluteFilePath()).toStdString();
}

/// The text with log and procedure named from the job's new folder.
Result<std::string> naming(std::string text, const QDir& folder, const QString& log, const QString& procedure,
                           const std::string& file) {
  for (const auto& [key, path] : {std::pair{"log", log}, std::pair{"procedure", procedure}}) {
    if (path.isEmpty()) continue;
    auto named = with_toml_key(text, {}, key, toml_words(seen_from(folder, path)), file);
    if (!named) return named;
    text = std::move(named).value();
  }
  return text;
}

}  // namespace

Result<std::string> job_text_of(const QString& job, const std::vector<JobChange>& changes, const QString& log,
                                const QString& procedure) {
  std::string text;
  const std::string name = job.isEmpty() ? unwritten_job_name().toStdString() : job.toStdString();
  const bool there = !job.isEmpty() && QFileInfo::exists(job);
  // One that is not written yet is meant to stand beside its log.
  const QDir folder = QFileInfo(job.isEmpty() ? log : job).dir();
  if (there) {
    QFile file(job);
    if (!file.open(QIODevice::ReadOnly))
      return Problem{ProblemKind::cannot_open, job.toStdString(), 0, "cannot be opened",
                     "look at its permissions"};
    text = file.readAll().toStdString();
  } else {
    text = new_job_text(seen_from(folder, log), seen_from(folder, procedure));
  }
  auto changed = changed_job(text, changes, name);
  const bool whole = !changes.empty() && changes.front().whole.has_value();
  if (!changed || there || !whole) return changed;
  return naming(std::move(changed).value(), folder, log, procedure, name);
}

Result<std::string> job_text_for(const OpenCase& open, const std::vector<JobChange>& changes,
                                 const QString& path) {
  const QString now = open.files.job;
  const QDir folder = QFileInfo(path).dir();
  const bool moved = !now.isEmpty() && QFileInfo(now).absoluteDir() != QDir(folder.absolutePath());
  if (moved && open.analysis.job && !open.analysis.job->previous_records.empty())
    return Problem{ProblemKind::usage, path.toStdString(), 0,
                   "the job names previous records by paths from its own folder",
                   "save it in the folder of the job that is open"};
  auto text = job_text_of(now, changes, open.log_path, open.procedure_path);
  if (!text || (!moved && !now.isEmpty())) return text;
  const Job* const job = open.analysis.job.get();
  const bool names_procedure = now.isEmpty() || (job && job->procedure);
  return naming(std::move(text).value(), folder, open.log_path,
                names_procedure ? open.procedure_path : QString(), path.toStdString());
}

QString unwritten_job_name() { return QCoreApplication::translate("OpenCase", "job not yet written"); }

QString unwritten_procedure_name() {
  return QCoreApplication::translate("OpenCase", "procedure not yet written");
}

QString read_only_words(const OpenCase& open) {
  return QCoreApplication::translate("OpenCase", "read from the report %1, cannot be changed")
      .arg(pdf::shown_text(QFileInfo(open.files.report).fileName().toStdString()));
}

bool must_read_again(const OpenCase& open) {
  for (const auto& [path, stamp] : open.stamps)
    if (path != open.procedure_path && !(FileStamp::of(path) == stamp)) return true;
  return !open.has_record();
}

}  // namespace soakwright::gui
