// SPDX-License-Identifier: GPL-3.0-or-later
// What is open, as one value: the files, what they gave, and what is said and drawn of it. Made off the GUI
// thread, shared and never changed after.
#pragma once

#include <QDateTime>
#include <map>
#include <memory>

#include "app/evidence/private_folder.h"
#include "app/gui/chart/trace_set.h"
#include "app/gui/open_files.h"
#include "app/gui/texts/log_preview.h"
#include "core/analyse.h"
#include "core/report/report.h"

namespace soakwright::gui {

/// Of the progress of opening; the rest is report and traces.
inline constexpr double kReadingShare = 0.9;

/// How a file stood when it was read, to tell later whether it has changed.
struct FileStamp {
  QDateTime changed;
  qint64 bytes = -1;
  static FileStamp of(const QString& path);
  bool operator==(const FileStamp&) const = default;
};

/// The PDF that a case was read from, as far as the case needs it while it is open.
struct ReportFile {
  std::shared_ptr<const evidence::PrivateFolder> folder;  ///< of the files that were inside
  std::string company_picture;                            ///< empty where there is none inside
  std::vector<std::string> unsaved;                       ///< what was in no file when it was written
  Paper paper = Paper::a4;
};

/// Without a log there is no record, no report and no traces: a procedure or a job waits for one.
struct OpenCase {
  OpenFiles files;
  QString log_path;              ///< the log that was read, also where the job named it
  QString procedure_path;        ///< likewise; empty where the procedure is in no file yet
  std::string procedure_source;  ///< the text that was evaluated, saved or not
  std::map<QString, FileStamp> stamps;
  Analysis analysis;
  std::shared_ptr<const Report> report;
  std::shared_ptr<const TraceSet> traces;
  std::vector<std::shared_ptr<const TraceSet>> previous_traces;  ///< as report->previous_records
  std::shared_ptr<const LogPreview> preview;
  std::shared_ptr<const ReportFile> from_report;  ///< null: the files are the user's own

  /// What was read from a report is that report's, and nothing of it can be changed.
  [[nodiscard]] bool read_only() const { return from_report != nullptr; }
  /// The file that the user opened: others are looked for and written beside it.
  [[nodiscard]] const QString& place() const { return read_only() ? files.report : log_path; }
  [[nodiscard]] bool has_record() const { return analysis.record != nullptr; }
};

/// Reads everything: what is `named` now, and of what was open before (`kept`) all that still goes with it. A
/// job brings the log and the procedure that it names. Long: not for the GUI thread.
Result<OpenCase> read_case(const OpenFiles& kept, const OpenFiles& named, const Watch& watch = {});

/// The files that are meant when `named` is opened on top of `kept`; `job` is what the job of the two says.
OpenFiles files_together(const OpenFiles& kept, const OpenFiles& named, const Job* job);

/// The same record against the procedure at `path`, or against `draft` in its place; neither the log nor its
/// phases are touched. Without a record the procedure is read and no more.
Result<OpenCase> evaluate_case_again(const OpenCase& open, const QString& path,
                                     const std::optional<DraftText>& draft = std::nullopt);

/// The file of the procedure: as the user named it, else as the job does; empty where neither names one.
QString filed_procedure(const OpenCase& open);

/// The job's text with the changes made on the import settings: what is read meanwhile, and what is written
/// into the job at `job`. Where there is no such file, a new job for that log and procedure, named from the
/// job's folder.
Result<std::string> job_text_of(const QString& job, const std::vector<JobChange>& changes, const QString& log,
                                const QString& procedure);
/// The job as it is wanted now, to be written at `path`: log and procedure are named from there. A job with
/// previous records, whose paths are its folder's, is refused for another folder.
Result<std::string> job_text_for(const OpenCase& open, const std::vector<JobChange>& changes,
                                 const QString& path);

/// What a job, a procedure that is not written yet is called in messages and in the report.
QString unwritten_job_name();
QString unwritten_procedure_name();

/// "read from the report d3-n2.pdf, cannot be changed"
QString read_only_words(const OpenCase& open);

/// How its report is made, shown or exported: in which unit, and what of it is in no file.
ReportOptions report_options(const OpenCase& open);
/// Makes the report anew, as report_options() says.
void say_again(OpenCase& open);

/// Traces, first lines and report of the analysis.
void prepare_to_show(OpenCase& open);
/// The text of the file; empty where it cannot be read.
std::string text_at(const QString& path);

/// Whether any file but the procedure has changed since `open` was read.
bool must_read_again(const OpenCase& open);

}  // namespace soakwright::gui
