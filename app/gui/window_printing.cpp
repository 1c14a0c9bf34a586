// SPDX-License-Identifier: GPL-3.0-or-later
// The report on paper: printed, and shown before as it will be printed.

#include <QAction>
#include <QFileInfo>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>

#include "app/gui/background/report_print.h"
#include "app/gui/main_window.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/texts/problem_text.h"

namespace soakwright::gui {
namespace {

/// Sheet and direction are the report's: what would choose others is not offered.
void hide_page_setup(const QPrintPreviewDialog& dialog) {
  const QStringList without{QPrintPreviewDialog::tr("Portrait"), QPrintPreviewDialog::tr("Landscape"),
                            QPrintPreviewDialog::tr("Page setup")};
  for (QAction* action : dialog.findChildren<QAction*>())
    if (without.contains(action->text())) action->setVisible(false);
}

}  // namespace

void MainWindow::printReport() {
  if (!session_.open().report || !mayExport()) return;
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(QFileInfo(session_.open().place()).completeBaseName());
  QPrintDialog dialog(&printer, this);
  if (dialog.exec() != QDialog::Accepted) return;
  sayNotPrinted(print_report(session_.open().report, printer));
}

void MainWindow::previewPrint() {
  if (!session_.open().report || !mayExport()) return;
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(QFileInfo(session_.open().place()).completeBaseName());
  prepare_sheet(*session_.open().report, printer);
  QPrintPreviewDialog dialog(&printer, this);
  dialog.setWindowTitle(tr("Print preview"));
  dialog.resize(size());
  hide_page_setup(dialog);
  Problems problems;
  connect(&dialog, &QPrintPreviewDialog::paintRequested, this,
          [&](QPrinter* sheets) { problems = print_report(session_.open().report, *sheets); });
  dialog.exec();
  sayNotPrinted(problems);
}

void MainWindow::sayNotPrinted(const Problems& problems) {
  if (!problems.empty()) refusal_->say(tr("The report cannot be printed"), problem_texts(problems));
}

}  // namespace soakwright::gui
