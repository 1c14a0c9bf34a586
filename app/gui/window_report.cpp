// SPDX-License-Identifier: GPL-3.0-or-later
// Reports that are written already: opened as a case that can be read and not changed, verified, signed.

#include <QAction>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <QStatusBar>
#include <QStyle>

#include "app/gui/main_window.h"
#include "app/gui/panes/report_checks.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/sign_dialog.h"
#include "app/gui/window_actions.h"
#include "app/gui/window_messages.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kReportSignSize = 18;

QString name_of(const QString& path) { return pdf::shown_text(QFileInfo(path).fileName().toStdString()); }

}  // namespace

void MainWindow::wireReports() {
  connect(actions_->verify_report, &QAction::triggered, this, [this] { askToOpen(FileKind::report); });
  connect(actions_->sign_report, &QAction::triggered, this, [this] { signReport(); });
  connect(from_report_, &MessageStrip::pressed, this, [this] { checks().show(); });
}

ReportChecks& MainWindow::checks() {
  if (!checks_) {
    checks_ = new ReportChecks(this);
    connect(checks_, &ReportChecks::changed, this, &MainWindow::showReportChecks);
    connect(checks_, &ReportChecks::againWanted, this, &MainWindow::verifyReport);
  }
  return *checks_;
}

void MainWindow::verifyReport(const QString& path) {
  checks().verify({path, folders_.modules, memory_.preferences().trusted});
  checks().show();
  checks().raise();
}

/// A report that is opened is verified, once; the checks go with it when another file is opened.
void MainWindow::followReport() {
  const OpenCase& open = session_.open();
  if (open.from_report != checked_) {
    checked_ = open.from_report;
    if (checks_) checks_->forget();
    if (open.read_only())
      verifyReport(open.files.report);
    else if (checks_)
      checks_->close();
  }
  showReportChecks();
}

void MainWindow::showReportChecks() {
  const OpenCase& open = session_.open();
  const bool of_this = open.read_only() && checks_ && checks_->report() == open.files.report;
  const QIcon working = style()->standardIcon(QStyle::SP_MessageBoxInformation);
  const ChartColours colours = ChartColours::of(palette());
  if (of_this && checks_->busy())
    from_report_->setSign(working);
  else if (of_this)
    from_report_->setSign(sign_icon(checks_->sign().value_or(Sign::not_met), colours, kReportSignSize));
  from_report_->say(of_this ? tr("%1: %2").arg(name_of(open.files.report), checks_->summary()) : QString());
}

void MainWindow::signReport() {
  const OpenCase& open = session_.open();
  const QString proposed = last_report_.isEmpty() ? open.files.report : last_report_;
  SignDialog dialog(proposed, folders_.modules, this);
  if (dialog.exec() != QDialog::Accepted) return;
  const QString path = dialog.signedFile();
  statusBar()->showMessage(tr("Signed: %1").arg(path), kWritten_ms);
  last_report_ = path;
  // What is open is the report without the signature: it is read and verified again.
  if (open.read_only() && QFileInfo(path) == QFileInfo(open.files.report)) return session_.reload();
  QMessageBox box(QMessageBox::Information, tr("Sign report"), tr("%1 is signed.").arg(name_of(path)),
                  QMessageBox::Close, this);
  box.setTextFormat(Qt::PlainText);
  QPushButton* verify = box.addButton(tr("&Verify it"), QMessageBox::AcceptRole);
  box.setDefaultButton(verify);
  box.setEscapeButton(QMessageBox::Close);
  box.exec();
  if (box.clickedButton() == verify) verifyReport(path);
}

}  // namespace soakwright::gui
