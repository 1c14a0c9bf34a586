// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/open_case.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "app/gui/texts/change_words.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/named_path.h"
#include "core/procedure/procedure_file.h"

namespace soakwright::gui {
namespace {

constexpr int kPreviewLines = 40;
constexpr double kReadingShare = 0.9;  ///< of the progress; the rest is report and traces

/// A path that the job names, for people: without `..` where that is not needed.
QString named_by(const Job& job, const std::optional<std::string>& written) {
  if (!written) return {};
  return QDir::cleanPath(QFile::decodeName(QByteArray::fromStdString(named_path(job, *written))));
}

/// The bytes of the file's name, as the file system has them.
std::string bytes_of(const QString& path) { return QFile::encodeName(path).toStdString(); }

Request request_for(const OpenFiles& files) {
  Request request;
  request.log = bytes_of(files.log);
  request.procedure = bytes_of(files.procedure);
  request.job = bytes_of(files.job);
  request.review = bytes_of(files.review);
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

/// What there is without a log: the files are read for their own sake, so that a faulty one is refused at
/// once.
Result<OpenCase> waiting_for_a_log(OpenCase open) {
  if (!open.procedure_path.isEmpty()) {
    auto procedure = read_procedure(bytes_of(open.procedure_path));
    if (!procedure) return procedure.problems();
    open.analysis.procedure = std::make_shared<const Procedure>(std::move(procedure).value());
  }
  return open;
}

}  // namespace

void say_again(OpenCase& open) {
  ReportOptions options;
  options.program_version = SOAKWRIGHT_VERSION;
  options.unit = open.files.unit;
  if (open.files.changes)
    for (const QString& words : change_words(*open.files.changes))
      options.unsaved.push_back(words.toStdString());
  if (open.analysis.review && open.analysis.review->sha256.empty())
    options.unsaved.push_back(
        QCoreApplication::translate("OpenCase", "decisions of the review").toStdString());
  open.report = std::make_shared<const Report>(make_report(open.analysis, options));
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
  if (other_log || other_job || other_procedure || named.changes) files.review.clear();
  if (other_log || other_job) files.changes.reset();
  if (!named.log.isEmpty()) files.log = named.log;
  if (!named.procedure.isEmpty()) files.procedure = named.procedure;
  if (!named.job.isEmpty()) files.job = named.job;
  if (!named.review.isEmpty()) files.review = named.review;
  if (named.changes) files.changes = named.changes;
  return files;
}

Result<OpenCase> read_case(const OpenFiles& kept, const OpenFiles& named, const Watch& watch) {
  OpenCase open;
  const QString job_path = named.job.isEmpty() ? kept.job : named.job;
  std::shared_ptr<const Job> job;
  if (!job_path.isEmpty()) {
    auto read = read_job(bytes_of(job_path));
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
    request.log = bytes_of(open.log_path);
    request.procedure = bytes_of(open.procedure_path);
  }
  auto analysis = open.procedure_path.isEmpty() ? inspect(request, reading) : check(request, reading);
  if (!analysis) return analysis.problems();
  open.analysis = std::move(analysis).value();
  open.traces = trace_set(open.analysis.record);
  open.preview = std::make_shared<const LogPreview>(
      preview_of(bytes_of(open.log_path), open.analysis.record->reading.encoding.value, kPreviewLines));
  say_again(open);
  if (watch.progress) watch.progress(1.0);
  return open;
}

Result<OpenCase> evaluate_case_again(const OpenCase& open, const QString& path) {
  auto procedure = read_procedure(bytes_of(path));
  if (!procedure) return procedure.problems();
  Analysis before = open.analysis;
  // A review is of the result under the procedure that it was written for.
  if (open.procedure_path != path) {
    before.review = nullptr;
    before.result_sha256.clear();
  }
  auto analysis = evaluate_again(before, std::make_shared<const Procedure>(std::move(procedure).value()));
  if (!analysis) return analysis.problems();
  OpenCase next = open;
  next.analysis = std::move(analysis).value();
  next.procedure_path = path;
  if (open.procedure_path != path) {
    next.files.procedure = path;
    next.files.review.clear();
  }
  note_stamps(next);
  say_again(next);
  return next;
}

Result<std::string> job_text_of(const QString& job, const std::vector<JobChange>& changes, const QString& log,
                                const QString& procedure) {
  std::string text;
  if (QFile file(job); !job.isEmpty() && file.exists()) {
    if (!file.open(QIODevice::ReadOnly))
      return Problem{ProblemKind::cannot_open, job.toStdString(), 0, "cannot be opened",
                     "look at its permissions"};
    text = file.readAll().toStdString();
  } else {
    const QDir folder = QFileInfo(job).dir();
    const auto seen = [&folder](const QString& path) {
      return path.isEmpty() ? std::string{}
                            : folder.relativeFilePath(QFileInfo(path).absoluteFilePath()).toStdString();
    };
    text = new_job_text(seen(log), seen(procedure));
  }
  return changed_job(text, changes, job.isEmpty() ? unwritten_job_name().toStdString() : job.toStdString());
}

QString unwritten_job_name() { return QCoreApplication::translate("OpenCase", "job not yet written"); }

bool must_read_again(const OpenCase& open) {
  for (const auto& [path, stamp] : open.stamps)
    if (path != open.procedure_path && !(FileStamp::of(path) == stamp)) return true;
  return !open.has_record();
}

}  // namespace soakwright::gui
