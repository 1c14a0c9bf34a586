// SPDX-License-Identifier: GPL-3.0-or-later
// Files that are no longer what was read, and what an earlier run left in no file.

#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QTimer>

#include "app/gui/main_window.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/texts/change_words.h"

namespace soakwright::gui {
namespace {

constexpr int kLookAgain_ms = 500;

QStringList left_words(const UnsavedWork& work) {
  QStringList words = change_words(work.job);
  if (work.draft) words.append(MainWindow::tr("the procedure's text"));
  return words;
}

}  // namespace

/// Kept by a run that did not end as one does: it asked nobody. The files are shown as they are until the
/// user decides.
void MainWindow::offerLeftChanges() {
  const ChangesPlace place = changesPlace();
  const bool of_report = session_.open().read_only() && !session_.refusedLog();
  if (place.log_sha256.isEmpty() || of_report) return left_->say({});
  ChangesPlace left = place;
  left.left = true;
  if (!session_.unsaved()) {
    if (const UnsavedWork found = memory_.changes(place); !found.none()) {
      memory_.keepChanges(left, found);
      memory_.keepChanges(place, {});
    }
  }
  const UnsavedWork work = memory_.changes(left);
  if (work.none()) return left_->say({});
  const QStringList words = left_words(work);
  const QString when = QLocale::c().toString(memory_.changedAt(left), QStringLiteral("d MMM yyyy hh:mm"));
  left_->say((words.size() == 1
                  ? tr("1 change of %1 was not saved when the program ended. It is not applied.").arg(when)
                  : tr("%1 changes of %2 were not saved when the program ended. They are not applied.")
                        .arg(words.size())
                        .arg(when)),
             words.join(u'\n'));
}

void MainWindow::answerLeftChanges(std::size_t button) {
  ChangesPlace left = changesPlace();
  left.left = true;
  const UnsavedWork work = memory_.changes(left);
  if (button == MessageStrip::kFirstButton) {
    memory_.keepChanges(left, {});
    left_->say({});
    std::vector<JobChange> both = work.job;
    for (const JobChange& now : session_.wanted()) both.push_back(now);
    session_.restoreChanges(both, session_.draft() ? session_.draft() : work.draft);
  } else if (button == MessageStrip::kSecondButton) {
    memory_.keepChanges(left, {});
    left_->say({});
  } else {
    QMessageBox::information(
        this, tr("Changes of an earlier session"),
        left_words(work).join(u'\n').toHtmlEscaped().replace(u'\n', QStringLiteral("<br>")));
  }
}

void MainWindow::showChangedFiles(const QStringList& paths) {
  // What is being read now is read as it is now.
  if (session_.busy() && !paths.isEmpty()) {
    QTimer::singleShot(kLookAgain_ms, this, [this] { showChangedFiles(watch_.changed()); });
    return;
  }
  changed_files_ = paths;
  QStringList names;
  for (const QString& path : paths)
    names.append(QFileInfo::exists(path) ? QFileInfo(path).fileName()
                                         : tr("%1 (no longer there)").arg(QFileInfo(path).fileName()));
  stale_->say(paths.isEmpty() ? QString()
                              : tr("Changed on disk: %1. The result shown is out of date.")
                                    .arg(names.join(QStringLiteral(", "))));
  showUnsaved();
}

void MainWindow::reloadFiles() {
  const QString job = session_.open().files.job;
  if (changed_files_.contains(job) && !mayLeave()) return;
  session_.reload();
}

void MainWindow::changeEvent(QEvent* event) {
  QMainWindow::changeEvent(event);
  if (event->type() == QEvent::ActivationChange && isActiveWindow()) watch_.look();
}

}  // namespace soakwright::gui
