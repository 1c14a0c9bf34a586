// SPDX-License-Identifier: GPL-3.0-or-later
// Jobs made in the window, and saved under another name.

#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QTabWidget>

#include "app/gui/background/exports.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/texts/column_names.h"
#include "app/gui/window_actions.h"

namespace soakwright::gui {

void MainWindow::wireJob() {
  connect(actions_->new_job, &QAction::triggered, this, [this] {
    if (mayLeave()) startJob();
  });
  connect(actions_->save_job_as, &QAction::triggered, this, [this] { saveJobAs(); });
}

void MainWindow::startJob() {
  if (!session_.open().has_record() || session_.open().read_only()) return;
  session_.newJob(job_for_record(session_.open()), tr("new job"));
  pages_->setCurrentWidget(job_);
  job_->setFocus();
}

void MainWindow::saveJobAs() {
  const OpenCase& open = session_.open();
  if (!open.has_record() || open.read_only()) return;
  const QFileInfo beside(open.files.job.isEmpty() ? open.log_path : open.files.job);
  QFileDialog dialog(this, tr("Save the job in another file"), beside.absolutePath(), tr("TOML (*.toml)"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(QStringLiteral("toml"));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  writeJobAs(dialog.selectedFiles().first());
}

bool MainWindow::writeJobAs(const QString& path) {
  const OpenCase& open = session_.open();
  if (open.read_only()) return false;
  const auto text = job_text_for(open, session_.wanted(), path);
  const Problems problems = text ? write_text(path, text.value()) : text.problems();
  if (problems.empty()) {
    memory_.keepChanges(changesPlace(), {});
    session_.openAs(FileKind::job, path);
  }
  showWritten(path, problems);
  return problems.empty();
}

}  // namespace soakwright::gui
