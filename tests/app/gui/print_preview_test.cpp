// SPDX-License-Identifier: GPL-3.0-or-later
// The print preview: the pages of the report, after the same question about unsaved settings as printing.

#include <QAction>
#include <QMessageBox>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>

#include "app/pdf/report_pages.h"
#include "app/pdf/report_writer.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class PrintPreviewTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static constexpr int kChartPage = 2;
  /// Dark pixels of the sheet's left half below that share of its height.
  static int inkedBelow(const QImage& picture, double share) {
    QRect sheet;
    for (int y = 0; y < picture.height(); ++y)
      for (int x = 0; x < picture.width(); ++x)
        if (picture.pixelColor(x, y) == Qt::white) sheet |= QRect(x, y, 1, 1);
    int count = 0;
    for (int y = sheet.top() + static_cast<int>(share * sheet.height()); y < sheet.bottom() - 8; ++y)
      for (int x = sheet.left() + 8; x < sheet.left() + sheet.width() / 2; ++x)
        count += qGray(picture.pixel(x, y)) < 140 ? 1 : 0;
    return count;
  }
  static QAction* preview(RealWindow& real) { return real.action(QStringLiteral("Print preview…")); }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path()); }

  void the_preview_shows_every_page_and_offers_no_other_sheet() {
    // A sheet turned while it is drawn on would be refused with a warning.
    QTest::failOnWarning(QRegularExpression(QStringLiteral("setPageLayout")));
    RealWindow real;
    QVERIFY(!preview(real)->isEnabled());
    QVERIFY(real.open({case_.job}));
    QVERIFY(preview(real)->isEnabled());
    const auto report = real.window.session().open().report;
    pdf::IssueFacts issue;
    QVERIFY(!issue_facts(*report, issue));
    const auto expected = static_cast<int>(pdf::report_pages(report, pdf::Scale(10.0), issue).size());
    int pages = 0;
    QStringList offered;
    int in_the_lower_part = 0;
    answer([&](QWidget* dialog) {
      auto* shown = qobject_cast<QPrintPreviewDialog*>(dialog);
      auto* sheets = dialog->findChild<QPrintPreviewWidget*>();
      if (!shown || !sheets || sheets->pageCount() == 0) return false;
      pages = sheets->pageCount();
      sheets->setCurrentPage(kChartPage);
      QTest::qWait(100);
      in_the_lower_part = inkedBelow(sheets->grab().toImage(), 0.75);
      for (const auto* action : shown->findChildren<QAction*>())
        if (action->isVisible()) offered.append(action->text());
      shown->reject();
      return true;
    });
    preview(real)->trigger();
    QCOMPARE(pages, expected);
    // The page of the chart lies across: on an upright sheet it is put on its side and fills it.
    QVERIFY2(in_the_lower_part > 100, qPrintable(QString::number(in_the_lower_part)));
    for (const char* sheet : {"Portrait", "Landscape", "Page setup"})
      QVERIFY2(!offered.contains(QLatin1String(sheet)), sheet);
    QVERIFY2(offered.contains(QStringLiteral("Print")), qPrintable(offered.join(u',')));
  }

  void unsaved_settings_are_said_before() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    real.window.session().change({std::nullopt, "client", "Port Ellery Power"});
    QVERIFY(real.settled());
    QString said;
    answer([&](QWidget* dialog) {
      auto* box = qobject_cast<QMessageBox*>(dialog);
      if (!box) return false;
      said = box->text();
      return press(QStringLiteral("Cancel"))(box);
    });
    preview(real)->trigger();
    QVERIFY2(said.contains(QStringLiteral("not saved in a job")), qPrintable(said));
    QVERIFY(!QApplication::activeModalWidget());
    QVERIFY(real.window.session().unsaved());
  }
};

QTEST_MAIN(PrintPreviewTest)
#include "print_preview_test.moc"
