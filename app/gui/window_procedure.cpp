// SPDX-License-Identifier: GPL-3.0-or-later
// The procedure edited in the window: evaluated as it is typed, saved, and made anew.

#include <QDesktopServices>
#include <QFileDialog>
#include <QFileInfo>
#include <QStackedWidget>
#include <QTabWidget>
#include <QUrl>

#include "app/gui/background/exports.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/new_procedure_dialog.h"
#include "app/gui/parts/save_preview.h"
#include "app/gui/texts/line_changes.h"
#include "app/gui/window_actions.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

/// A name for the file of a procedure: its number, where that makes one.
QString file_name_for(const OpenCase& open) {
  QString name;
  if (open.analysis.procedure)
    for (const QChar letter : QString::fromStdString(open.analysis.procedure->number))
      name += letter.isLetterOrNumber() ? letter.toLower() : QChar(u'-');
  if (name.isEmpty()) name = QStringLiteral("procedure");
  return name + QStringLiteral(".toml");
}

}  // namespace

void MainWindow::wireProcedure() {
  connect(procedure_, &ProcedurePane::changed, &session_, &Session::changeProcedure);
  connect(procedure_, &ProcedurePane::saveWanted, this, [this] { saveProcedure(true); });
  connect(procedure_, &ProcedurePane::saveAsWanted, this, [this] { saveProcedureAs(); });
  connect(procedure_, &ProcedurePane::newWanted, actions_->new_procedure, &QAction::trigger);
  connect(procedure_, &ProcedurePane::editorWanted, this, [this] {
    QDesktopServices::openUrl(QUrl::fromLocalFile(QFileInfo(session_.procedureFile()).absoluteFilePath()));
  });
  connect(actions_->new_procedure, &QAction::triggered, this, [this] { askForNewProcedure(); });
  connect(actions_->save_procedure_as, &QAction::triggered, this, [this] { saveProcedureAs(); });
}

QString MainWindow::askForProcedureFile() {
  const OpenCase& open = session_.open();
  const QString beside = open.log_path.isEmpty() ? session_.procedureFile() : open.log_path;
  QFileDialog dialog(this, tr("Save procedure"), QFileInfo(beside).absolutePath(), tr("TOML (*.toml)"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(QStringLiteral("toml"));
  dialog.selectFile(file_name_for(open));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
  return dialog.selectedFiles().first();
}

bool MainWindow::saveProcedure(bool preview) {
  if (!session_.draft()) return true;
  QString path = session_.procedureFile();
  const bool named = !path.isEmpty();
  if (!named) path = askForProcedureFile();
  if (path.isEmpty()) return false;
  const std::string text = session_.draft()->text;
  const QString before = text_on_disk(path);
  // What another program wrote meanwhile is not overwritten unseen.
  const bool other_hand = named && before.toStdString() != session_.filedProcedure();
  if (named && (preview || other_hand)) {
    const QStringList lines = line_changes(before, QString::fromStdString(text));
    QStringList words{tr("Changes of the procedure")};
    if (other_hand) words.append(tr("Another program has changed the file meanwhile."));
    if (!ask_to_save(this, path, false, words, lines)) return false;
  }
  return writeProcedure(path);
}

bool MainWindow::writeProcedure(const QString& path) {
  if (session_.open().read_only()) return false;
  const Problems problems = write_text(path, session_.procedureText());
  if (problems.empty()) {
    if (session_.draft())
      session_.procedureWritten(path);
    else
      session_.openAs(FileKind::procedure, path);
  }
  showWritten(path, problems);
  return problems.empty();
}

bool MainWindow::saveProcedureAs() {
  if (session_.procedureText().empty()) return false;
  const QString path = askForProcedureFile();
  return !path.isEmpty() && writeProcedure(path);
}

void MainWindow::askForNewProcedure() {
  if (session_.open().read_only() || (session_.draft() && !mayLeave())) return;
  NewProcedureDialog dialog(session_.open(), folders_, this);
  if (dialog.exec() != QDialog::Accepted) return;
  startProcedure(dialog.text(), dialog.words());
}

void MainWindow::startProcedure(const std::string& text, const QString& words) {
  if (session_.open().read_only()) return;
  session_.newProcedure(text, words);
  middle_->setCurrentIndex(1);
  pages_->setCurrentWidget(procedure_);
  procedure_->setFocus();
}

}  // namespace soakwright::gui
