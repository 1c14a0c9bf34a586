// SPDX-License-Identifier: GPL-3.0-or-later
// What is in no file: that it is shown, asked about before it is lost, saved, and offered again after a
// crash. And the other way round: files that are no longer what was read.

#include <QAction>
#include <QFileDialog>
#include <QFileInfo>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>
#include <QStackedWidget>
#include <QUndoStack>

#include "app/gui/background/exports.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/exclude_dialog.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/save_preview.h"
#include "app/gui/parts/summary_bar.h"
#include "app/gui/texts/change_words.h"
#include "app/gui/texts/line_changes.h"
#include "app/gui/window_actions.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

QString kind_words(FileKind kind, int count) {
  switch (kind) {
    case FileKind::log:
      return MainWindow::tr("%1 logs were given; one is open at a time. Open which?").arg(count);
    case FileKind::procedure:
      return MainWindow::tr("%1 procedures were given; one is open at a time. Open which?").arg(count);
    case FileKind::job:
      return MainWindow::tr("%1 jobs were given; one is open at a time. Open which?").arg(count);
    case FileKind::report:
      return MainWindow::tr("%1 reports were given; one is open at a time. Open which?").arg(count);
    case FileKind::review:
      break;
  }
  return MainWindow::tr("%1 reviews were given; one is open at a time. Open which?").arg(count);
}

/// Of several files of one kind the one to open; none if the user opens none.
std::optional<QString> choose_one(QWidget* parent, FileKind kind, const QStringList& paths) {
  QStringList names;
  for (const QString& path : paths) {
    const QFileInfo info(path);
    names.append(info.exists() ? MainWindow::tr("%1   (%2)").arg(info.fileName(), info.absolutePath())
                               : MainWindow::tr("%1   (not found)").arg(path));
  }
  QInputDialog dialog(parent);
  dialog.setWindowTitle(MainWindow::tr("Open one of several files"));
  dialog.setLabelText(kind_words(kind, static_cast<int>(paths.size())));
  dialog.setOption(QInputDialog::UseListViewForComboBoxItems);
  dialog.setComboBoxItems(names);
  if (dialog.exec() != QDialog::Accepted) return std::nullopt;
  const qsizetype chosen = names.indexOf(dialog.textValue());
  return chosen < 0 ? std::nullopt : std::optional(paths[chosen]);
}

/// As the file is on disk; empty where there is none.
}  // namespace

void MainWindow::wireSaving() {
  connect(unsaved_, &MessageStrip::pressed, this, [this](std::size_t button) {
    if (button == MessageStrip::kFirstButton)
      session_.edits().undo();
    else
      saveWhatIsUnsaved(true);
  });
  connect(left_, &MessageStrip::pressed, this, &MainWindow::answerLeftChanges);
  connect(stale_, &MessageStrip::pressed, this, [this] { reloadFiles(); });
  connect(&watch_, &FileWatch::changedOnDisk, this, &MainWindow::showChangedFiles);
}

bool MainWindow::saveWhatIsUnsaved(bool preview) {
  if (session_.reviewUnsaved()) return saveReview(preview);
  // The procedure first: the job may name it.
  if (session_.draft() && !saveProcedure(preview)) return false;
  return session_.wanted().empty() || saveJob(preview);
}

QStringList MainWindow::unsavedWords() const {
  QStringList words = change_words(session_.wanted());
  if (session_.draft())
    words.append(session_.draft()->in_a_file ? tr("procedure changed") : tr("new procedure"));
  if (session_.reviewUnsaved()) words.append(tr("decisions of the review"));
  return words;
}

void MainWindow::openPaths(const QStringList& paths) {
  std::map<FileKind, QStringList> kinds;
  for (const QString& path : paths)
    if (QStringList& same = kinds[file_kind(path)]; !same.contains(path)) same.append(path);
  QStringList chosen;
  for (const auto& [kind, same] : kinds) {
    const auto one = same.size() == 1 ? std::optional(same.first()) : choose_one(this, kind, same);
    if (!one) return;
    chosen.append(*one);
  }
  const bool replaces =
      kinds.contains(FileKind::log) || kinds.contains(FileKind::job) || kinds.contains(FileKind::report);
  const bool other_procedure = session_.draft() && kinds.contains(FileKind::procedure);
  if ((replaces || other_procedure) && !mayLeave()) return;
  session_.openFiles(chosen);
}

ChangesPlace MainWindow::changesPlace() const {
  const auto& refused = session_.refusedLog();
  QString job = session_.open().files.job;
  if (refused) job = refused->named.job.isEmpty() ? refused->kept.job : refused->named.job;
  return {session_.logSha(), job};
}

void MainWindow::keepChanges() {
  if (!session_.open().read_only() || session_.refusedLog())
    memory_.keepChanges(changesPlace(), {session_.wanted(), session_.draft()});
  showMiddle();
  reading_->show(session_);
  job_->show(session_);
  procedure_->show(session_);
  showMovableLimits();
  showUnsaved();
}

void MainWindow::showMiddle() {
  const bool procedure = session_.draft() || pages_->currentWidget() == procedure_;
  const bool waiting = !session_.procedureText().empty() && procedure;
  middle_->setCurrentIndex(session_.open().has_record() || session_.refusedLog() || waiting ? 1 : 0);
}

void MainWindow::showUnsaved() {
  const OpenCase& open = session_.open();
  const Report* report = session_.report();
  const bool unsaved = session_.unsaved();
  const QStringList words = unsavedWords();
  const QString whose = open.files.job.isEmpty() ? tr("Not in a job file:") : tr("Not in the job file:");
  QString said = words.join(QStringLiteral("; "));
  if (!session_.wanted().empty())
    said = whose + u' ' + said;
  else if (session_.draft())
    said = tr("Not saved: %1").arg(said);
  if (session_.reviewUnsaved()) said = tr("Decisions of the review are in no file");
  const bool refused = !session_.problems().empty() && (session_.draft() || !session_.wanted().empty());
  if (refused && open.has_record()) said += tr(". Not evaluated: %1").arg(session_.sheetTexts().first());
  unsaved_->say(said, words.join(u'\n'));
  unsaved_->button(MessageStrip::kFirstButton)->setEnabled(session_.edits().canUndo());
  unsaved_->button(MessageStrip::kSecondButton)
      ->setText(session_.reviewUnsaved()     ? tr("Save review…")
                : !session_.wanted().empty() ? tr("Save in the job…")
                                             : tr("Save procedure…"));
  const bool can_save = unsaved && session_.sheetTexts().isEmpty() && !session_.refusedLog();
  unsaved_->button(MessageStrip::kSecondButton)->setEnabled(can_save);
  actions_->save->setEnabled(can_save);
  const bool may_save = session_.sheetTexts().isEmpty() && !open.read_only();
  actions_->save_job_as->setEnabled(open.has_record() && may_save);
  actions_->save_procedure_as->setEnabled(!session_.procedureText().empty() && may_save);

  const bool stale = !changed_files_.isEmpty() && open.has_record();
  verdict_->show(open, {unsaved && open.has_record(), stale, session_.refusedLog().has_value()});
  QStringList title;
  if (!open.log_path.isEmpty()) title.append(open.log_path.section(u'/', -1));
  if (report && report->verdict) {
    QString verdict = pdf::shown_text(report->verdict_text);
    if (stale) verdict = tr("%1, out of date").arg(verdict);
    if (unsaved) verdict = tr("%1, not saved").arg(verdict);
    title.append(verdict);
  }
  if (open.read_only()) title.append(read_only_words(open));
  title.append(tr("Soakwright"));
  setWindowTitle(title.join(QStringLiteral(" – ")) + QStringLiteral("[*]"));
  setWindowModified(unsaved);
}

bool MainWindow::mayLeave() {
  if (!session_.unsaved()) return true;
  const bool procedure_only = session_.wanted().empty() && !session_.reviewUnsaved();
  QMessageBox box(QMessageBox::Warning, tr("Unsaved changes"),
                  procedure_only                        ? tr("The procedure was changed and is not saved.")
                  : session_.wanted().empty()           ? tr("Decisions of the review are in no file.")
                  : session_.open().files.job.isEmpty() ? tr("The changed settings are in no job file.")
                                                        : tr("The changed settings are not in the job file."),
                  QMessageBox::Discard | QMessageBox::Cancel, this);
  box.setInformativeText(unsavedWords().join(u'\n'));
  // What cannot be read is not worth a file.
  if (actions_->save->isEnabled()) {
    box.addButton(QMessageBox::Save);
    box.setDefaultButton(QMessageBox::Save);
  } else {
    box.setDefaultButton(QMessageBox::Cancel);
  }
  box.setEscapeButton(QMessageBox::Cancel);
  switch (box.exec()) {
    case QMessageBox::Save:
      return saveWhatIsUnsaved(false);
    case QMessageBox::Discard:
      memory_.keepChanges(changesPlace(), {});
      return true;
    default:
      return false;
  }
}

QString MainWindow::jobToSaveIn() {
  if (!session_.open().files.job.isEmpty()) return session_.open().files.job;
  const QFileInfo log(session_.open().log_path);
  QFileDialog dialog(this, tr("Save in a job"), log.absolutePath(), tr("TOML (*.toml)"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(QStringLiteral("toml"));
  // Into a job that exists the changes are added; what they are is shown before.
  dialog.setOption(QFileDialog::DontConfirmOverwrite);
  dialog.selectFile(log.completeBaseName() + QStringLiteral(".toml"));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
  return dialog.selectedFiles().first();
}

bool MainWindow::saveJob(bool preview) {
  if (session_.wanted().empty()) return true;
  const bool named = !session_.open().files.job.isEmpty();
  const QString path = jobToSaveIn();
  if (path.isEmpty()) return false;
  const auto text =
      job_text_of(path, session_.wanted(), session_.open().log_path, session_.open().procedure_path);
  if (!text) {
    showWritten(path, text.problems());
    return false;
  }
  if (preview || !named) {
    const QStringList lines = line_changes(text_on_disk(path), QString::fromStdString(text.value()));
    if (!ask_to_save(this, path, !QFileInfo::exists(path), change_words(session_.wanted()), lines))
      return false;
  }
  const std::vector<std::string> texts = session_.jobTexts(path);
  const Problems problems = write_text(path, text.value());
  if (problems.empty()) session_.jobWritten(path, texts);
  showWritten(path, problems);
  return problems.empty();
}

void MainWindow::writeJob(const QString& path) {
  if (session_.wanted().empty()) return;
  const std::vector<std::string> texts = session_.jobTexts(path);
  const auto text =
      job_text_of(path, session_.wanted(), session_.open().log_path, session_.open().procedure_path);
  const Problems problems = text ? write_text(path, text.value()) : text.problems();
  if (problems.empty()) session_.jobWritten(path, texts);
  showWritten(path, problems);
}

bool MainWindow::mayExport() {
  if (session_.draft()) {
    QMessageBox box(QMessageBox::Warning, tr("Unsaved changes"),
                    tr("This result rests on a procedure that is not saved."), QMessageBox::Cancel, this);
    box.setInformativeText(tr("The report holds the procedure's file. Save the procedure first."));
    box.addButton(QMessageBox::Save)->setEnabled(actions_->save->isEnabled());
    box.setEscapeButton(QMessageBox::Cancel);
    // Saved, the record is evaluated again: what is exported then is not there yet.
    if (box.exec() == QMessageBox::Save) saveProcedure(false);
    return false;
  }
  if (session_.reviewUnsaved()) {
    QMessageBox box(QMessageBox::Warning, tr("Unsaved changes"),
                    tr("Decisions of the review are in no file."), QMessageBox::Cancel, this);
    box.setInformativeText(tr("The report holds the review's file. Save the review first."));
    box.addButton(QMessageBox::Save);
    box.setEscapeButton(QMessageBox::Cancel);
    return box.exec() == QMessageBox::Save && saveReview(false);
  }
  if (session_.wanted().empty()) return true;
  QMessageBox box(QMessageBox::Warning, tr("Unsaved changes"),
                  tr("This result rests on settings that are not saved in a job."), QMessageBox::Cancel,
                  this);
  box.setInformativeText(change_words(session_.wanted()).join(u'\n'));
  QPushButton* save = box.addButton(tr("Save the job first"), QMessageBox::AcceptRole);
  QPushButton* as_is = box.addButton(tr("Export as not saved"), QMessageBox::DestructiveRole);
  as_is->setToolTip(tr("The report says across its first page that the settings are in no file"));
  save->setEnabled(actions_->save->isEnabled());
  box.setEscapeButton(box.addButton(QMessageBox::Cancel));
  box.setDefaultButton(save);
  box.exec();
  if (box.clickedButton() == as_is) return true;
  // Saved, the record is read again: what is exported then is not there yet.
  if (box.clickedButton() == save) saveJob(false);
  return false;
}

void MainWindow::exclude() {
  const Selection& chosen = session_.selection();
  std::optional<std::size_t> channel;
  std::optional<std::pair<double, double>> time;
  if (chosen.kind == Selection::Kind::suspect) {
    const Suspect& suspect =
        session_.open().analysis.course->suspects[session_.report()->suspects[chosen.index].suspect];
    channel = suspect.channel;
    time = std::pair{suspect.from_s, suspect.to_s};
  } else if (const auto trace = chart_->emphasised()) {
    channel = session_.report()->chart.traces[*trace].channel;
  }
  askToExclude(channel, time);
}

void MainWindow::askToExclude(std::optional<std::size_t> channel,
                              std::optional<std::pair<double, double>> time) {
  if (!session_.open().has_record() || session_.open().read_only()) return;
  ExcludeDialog dialog(session_.open().analysis.record, channel, time, this);
  if (dialog.exec() == QDialog::Accepted) session_.change(dialog.change());
}

}  // namespace soakwright::gui
