// SPDX-License-Identifier: GPL-3.0-or-later
// The window's dealings with files: what to open, recent files, where to export to.

#include <QAction>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMenu>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTabWidget>

#include "app/gui/background/exports.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/start_page.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/plain_tip.h"
#include "app/gui/texts/problem_text.h"
#include "app/gui/window_actions.h"
#include "app/gui/window_messages.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kPictureScale = 2.0;

}  // namespace

void MainWindow::askToOpen(FileKind kind) {
  QString title = tr("Open log");
  QString filter = tr("Logs (*.csv *.txt *.tsv *.log *.dat);;Reports (*.pdf);;All files (*)");
  if (kind == FileKind::procedure) title = tr("Open procedure");
  if (kind == FileKind::job) title = tr("Open job");
  if (kind == FileKind::review) title = tr("Open review");
  if (kind != FileKind::log) filter = tr("TOML (*.toml);;All files (*)");
  if (kind == FileKind::report) {
    title = tr("Verify report");
    filter = tr("PDF (*.pdf);;All files (*)");
  }
  const OpenCase& open = session_.open();
  const QStringList known = open.files.all() + memory_.recent();
  const QString folder = known.isEmpty() ? QString() : QFileInfo(known.first()).path();
  const QString path = QFileDialog::getOpenFileName(this, title, folder, filter);
  if (path.isEmpty()) return;
  if (file_kind(path) == FileKind::report) kind = FileKind::report;
  const bool replaces = kind == FileKind::log || kind == FileKind::job || kind == FileKind::report ||
                        (kind == FileKind::procedure && (session_.draft() || session_.reviewUnsaved())) ||
                        (kind == FileKind::review && session_.reviewUnsaved());
  if (!replaces || mayLeave()) session_.openAs(kind, path);
}

void MainWindow::openFromList(const QStringList& paths) { openPaths(paths); }

void MainWindow::offerRecent() {
  const OpenCase& open = session_.open();
  start_->offer(memory_.last(), memory_.recent());
  start_->offerSamples(sample_jobs(folders_.samples));
  QString waiting;
  if (!open.has_record() && open.analysis.procedure)
    waiting = tr("Procedure %1 is open. Open a log to evaluate.")
                  .arg(pdf::shown_text(open.analysis.procedure->number));
  else if (!open.has_record() && open.analysis.job)
    waiting = tr("The job is open and names no log. Open its log.");
  start_->setWaiting(waiting);
  actions_->recent->clear();
  for (const QString& path : memory_.recent()) {
    QAction* action = actions_->recent->addAction(tr("%1   (%2)")
                                                      .arg(QFileInfo(path).fileName(), QFileInfo(path).path())
                                                      .replace(u'&', QStringLiteral("&&")));
    action->setStatusTip(path);
    action->setToolTip(plain_tip(path));
    connect(action, &QAction::triggered, this, [this, path] { openFromList({path}); });
  }
  actions_->recent->setEnabled(!actions_->recent->isEmpty());
}

void MainWindow::askToExport(const QString& title, const QString& filter, const QString& suffix,
                             void (MainWindow::*write)(const QString&)) {
  if (!mayExport()) return;
  const QFileInfo log(session_.open().place());
  QFileDialog dialog(this, title, log.absolutePath(), filter);
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  // Added before the dialog looks whether there is such a file, which it then asks about.
  dialog.setDefaultSuffix(suffix.mid(1));
  dialog.selectFile(log.completeBaseName() + suffix);
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  (this->*write)(dialog.selectedFiles().first());
}

void MainWindow::showWritten(const QString& path, const Problems& problems) {
  status_->clear();
  if (problems.empty()) {
    statusBar()->showMessage(tr("Written: %1").arg(path), kWritten_ms);
    if (file_kind(path) == FileKind::report) last_report_ = path;
  } else {
    refusal_->say(tr("The file cannot be written"), problem_texts(problems));
  }
  emit exported(path, problems.empty());
}

void MainWindow::exportReport(const QString& path) {
  if (session_.open().has_record() && !session_.open().read_only())
    exports_.start(path, [analysis = session_.open().analysis, options = report_options(session_.open()),
                          path] { return export_report(analysis, options, path); });
}

void MainWindow::exportResult(const QString& path) {
  if (session_.open().has_record())
    exports_.start(path,
                   [analysis = session_.open().analysis, path] { return export_result(analysis, path); });
}

void MainWindow::exportPicture(const QString& path) {
  if (!session_.open().has_record()) return;
  exports_.start(path, [picture = chart_->picture(kPictureScale).toImage(), path] {
    return export_picture(picture, path);
  });
}

void MainWindow::showRefusedLog() {
  middle_->setCurrentIndex(1);
  // With nothing else open the sheet says it, once; else the bar does, and the sheet when one goes there.
  if (!session_.open().has_record()) {
    pages_->setCurrentWidget(reading_);
    refusal_->putAway();
  }
  reading_->show(session_);
  actions_->show_reading->setEnabled(true);
  showUnsaved();
  offerLeftChanges();
}

}  // namespace soakwright::gui
