// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/report_case.h"

#include <QFile>
#include <utility>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/pdf_file.h"
#include "app/evidence/placed_files.h"

namespace soakwright::gui {
namespace {

QString decoded(const std::string& path) { return QFile::decodeName(path.c_str()); }

/// The private folder's name says nothing to a reader: it is the report that cannot be opened.
Problems of_report(Problems problems, const std::string& report) {
  for (Problem& problem : problems) {
    problem.what = "the files inside cannot be evaluated: " + problem.what;
    problem.file = report;
    problem.line = 0;
  }
  return problems;
}

void name_files(OpenCase& open, const Request& request) {
  open.files.log = decoded(request.log);
  open.files.procedure = decoded(request.procedure);
  open.files.job = decoded(request.job);
  open.files.review = decoded(request.review);
  open.log_path = open.files.log;
  open.procedure_path = open.files.procedure;
  open.procedure_source = text_at(open.procedure_path);
}

}  // namespace

Result<OpenCase> read_report(const QString& path, const OpenFiles& kept, const Watch& watch) {
  const std::string report = QFile::encodeName(path).toStdString();
  OpenCase open;
  open.files = kept.nothing_in_these_units();
  open.files.report = path;
  open.stamps[path] = FileStamp::of(path);
  const auto file = evidence::PdfFile::read_file(report);
  if (!file) return file.problems();
  const auto taken = evidence::evidence_of(file.value(), report, watch);
  if (!taken) return taken.problems();
  const auto placed = evidence::place_files(taken.value());
  if (!placed) return placed.problems();
  const Request& request = placed.value().request;
  name_files(open, request);
  open.from_report = std::make_shared<const ReportFile>(ReportFile{
      placed.value().folder, placed.value().company_picture, taken.value().unsaved, taken.value().paper});
  const Watch reading{[&watch](double share) { watch.report(kReadingShare * share); }, watch.cancelled};
  auto analysis = request.procedure.empty() ? inspect(request, reading) : check(request, reading);
  if (!analysis) return of_report(analysis.problems(), report);
  open.analysis = std::move(analysis).value();
  prepare_to_show(open);
  watch.report(1.0);
  return open;
}

}  // namespace soakwright::gui
