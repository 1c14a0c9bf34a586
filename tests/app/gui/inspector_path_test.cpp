// SPDX-License-Identifier: GPL-3.0-or-later
// The inspector: handed a log and a procedure, wants the verdict, its evidence, how the file was read, and a
// report.

#include <QComboBox>
#include <QFileInfo>
#include <QFontDatabase>
#include <QMimeData>
#include <QTabWidget>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class InspectorPathTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_;

 private slots:
  void initTestCase() {
    // Without any font every glyph is a box, and everything else here would still pass.
    QVERIFY2(!QFontDatabase::families().isEmpty(), "no font is installed");
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), made::run_with_dip());
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
  }

  void drops_both_files_and_reads_the_verdict() {
    RealWindow real;
    QMimeData dropped;
    dropped.setUrls({QUrl::fromLocalFile(procedure_), QUrl::fromLocalFile(log_)});
    QDragEnterEvent enter({300, 300}, Qt::CopyAction, &dropped, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&real.window, &enter);
    QVERIFY(enter.isAccepted());
    QDropEvent drop({300, 300}, Qt::CopyAction, &dropped, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&real.window, &drop);
    QVERIFY(real.settled());
    const auto* verdict = real.part<SummaryBar>();
    // Two hours held with a dip of 12 minutes half an hour in: 78 min in one piece, 100 required.
    QCOMPARE(verdict->word(), QStringLiteral("Not met"));
    QVERIFY(!verdict->cautionText().isEmpty());
    QVERIFY(real.window.windowTitle().contains(QStringLiteral("d3-n2.csv")));
  }

  void opens_a_job_with_an_earlier_record_and_reads_again_where_that_changed() {
    QTemporaryDir folder;
    const QString sample = QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-128-over-two-days/");
    for (const char* name : {"job.toml", "htp-052.toml", "lug-day-1.csv", "lug-day-2.csv"})
      QVERIFY(QFile::copy(sample + QLatin1String(name), folder.filePath(QLatin1String(name))));
    RealWindow real;
    QVERIFY(real.open({folder.filePath(QStringLiteral("job.toml"))}));
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Met"));
    const auto* report = real.window.session().report();
    for (std::size_t i = 0; i < report->requirements.size(); ++i)
      if (report->requirements[i].id == "stage-2.hold-time")
        real.window.session().select({Selection::Kind::requirement, i});
    const QString card = real.part<DetailPanel>()->toPlainText();
    QVERIFY2(card.contains(QStringLiteral("in total over 2 records; the procedure requires 4 h. Cycle 1: ")),
             qPrintable(card));

    // Three hours of the first day are not enough.
    QFile first(folder.filePath(QStringLiteral("lug-day-1.csv")));
    QVERIFY(first.open(QIODevice::ReadWrite));
    const QByteArray all = first.readAll();
    qsizetype end = 0;
    for (int line = 0; line < 200; ++line) end = all.indexOf('\n', end) + 1;
    QVERIFY(first.resize(end));
    first.close();
    real.action(QStringLiteral("Reload"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(real.part<SummaryBar>()->word() != QStringLiteral("Met"));
  }

  void finds_the_worst_requirement_first_and_its_evidence_on_the_chart() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* list = real.part<ListPane>(QStringLiteral("Requirements"));
    const auto* report = real.window.session().report();
    QVERIFY(report);
    QCOMPARE(list->lines().rowCount(), static_cast<int>(report->requirements.size()));
    const ListLine& first = list->lines().content().lines.front();
    QVERIFY(first.sign == Sign::not_met);
    QCOMPARE(first.cells[0], QStringLiteral("Not met"));

    auto* chart = real.part<ChartPane>();
    const auto whole = chart->ranges();
    int row = -1;
    for (int i = 0; i < list->lines().rowCount(); ++i)
      if (report->requirements[list->lines().content().lines[static_cast<std::size_t>(i)].index].id ==
          "stage-1.heating-rate")
        row = i;
    QVERIFY(row >= 0);
    const auto& rate =
        report->requirements[list->lines().content().lines[static_cast<std::size_t>(row)].index];
    list->scrollTo(list->model()->index(row, 1));
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {},
                      list->visualRect(list->model()->index(row, 1)).center());
    QVERIFY(rate.evidence.from_s && rate.evidence.to_s && rate.evidence.fit);
    const auto seen = chart->ranges();
    QVERIFY(seen.to_s - seen.from_s < 0.5 * (whole.to_s - whole.from_s));
    QVERIFY(seen.from_s <= *rate.evidence.from_s && *rate.evidence.to_s <= seen.to_s);
    QVERIFY(seen.low_c < rate.evidence.fit->first.level_c && rate.evidence.fit->second.level_c < seen.high_c);

    const QString card = real.part<DetailPanel>()->toPlainText();
    for (const std::string& said : {rate.limit, rate.measured, rate.margin, rate.text})
      QVERIFY2(card.contains(QString::fromStdString(said)), said.c_str());
    for (const LabelledText& fact : rate.alternatives)
      QVERIFY2(card.contains(QString::fromStdString(fact.text)), fact.text.c_str());
  }

  void sees_how_the_file_was_read() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Import settings"))->trigger();
    const auto* sheet = real.part<ImportSettingsPane>();
    QVERIFY(sheet->isVisible());
    const auto& lines = sheet->lines().lines().content().lines;
    QCOMPARE(lines[0].cells[2], QStringLiteral("Recorder: Port Ellery bay 2"));
    QCOMPARE(lines[0].cells[1], QStringLiteral("heading"));
    QCOMPARE(lines[2].cells[1], QStringLiteral("column names"));
    QCOMPARE(sheet->columns()->rowCount(), 4);
    QCOMPARE(sheet->columns()->item(0, ColumnTable::name)->text(), QStringLiteral("TC1"));
    QVERIFY(sheet->settings()->box("encoding")->currentText().contains(QStringLiteral("utf-8")));
  }

  void hands_over_the_report() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QSignalSpy written(&real.window, &MainWindow::exported);
    const QString path = real.folder.filePath(QStringLiteral("report.pdf"));
    real.window.exportReport(path);
    QVERIFY(written.wait(30'000));
    QCOMPARE(written[0][1].toBool(), true);
    QFile pdf(path);
    QVERIFY(pdf.open(QIODevice::ReadOnly));
    QCOMPARE(pdf.read(5), QByteArray("%PDF-"));
    QVERIFY(pdf.size() > 10'000);
  }

  void is_told_where_a_report_cannot_be_written() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QSignalSpy written(&real.window, &MainWindow::exported);
    real.window.exportReport(real.folder.filePath(QStringLiteral("no-such-folder/report.pdf")));
    QVERIFY(written.wait(30'000));
    QCOMPARE(written[0][1].toBool(), false);
    QVERIFY(real.window.session().open().has_record());
  }

  void sees_the_uncertainty_budget_behind_a_guarded_margin() {
    RealWindow real;
    QVERIFY(real.open(
        {QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-117-stress-relief/job-guarded.toml")}));
    const auto* report = real.window.session().report();
    QVERIFY(report && report->guarded);
    for (std::size_t i = 0; i < report->requirements.size(); ++i) {
      if (report->requirements[i].id != "record.temperature-max") continue;
      real.window.session().select({Selection::Kind::requirement, i});
    }
    const QString card = real.part<DetailPanel>()->toPlainText();
    // IEC 60584-1, type K, class 1, at the temperature_max of 650 °C: 0.4 % are 2.6 °C.
    for (const char* said : {"Uncertainty budget of", "IEC 60584-1 class 1", "650 °C, maximum temperature",
                             "2.60", "extension cable", "√12", "U of a rate"})
      QVERIFY2(card.contains(QString::fromUtf8(said)), qPrintable(card));
  }
};

QTEST_MAIN(InspectorPathTest)
#include "inspector_path_test.moc"
