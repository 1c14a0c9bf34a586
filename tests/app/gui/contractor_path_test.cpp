// SPDX-License-Identifier: GPL-3.0-or-later
// The contractor: opens the job, looks at margins, hides channels, changes a limit in an editor and presses
// F5.

#include <QFile>
#include <QTreeView>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/summary_bar.h"
#include "core/procedure/procedure_file.h"
#include "core/report/json/result_json.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ContractorPathTest : public QObject {
  Q_OBJECT

 private:
  std::unique_ptr<QTemporaryDir> files_;
  QString log_, procedure_, job_;

 private slots:
  void init() {
    files_ = std::make_unique<QTemporaryDir>();
    log_ = made::log(files_->path(), QStringLiteral("d3-n2.csv"), {});
    procedure_ = made::procedure(files_->path(), QStringLiteral("htp-021.toml"), 140, 100);
    job_ = made::job(files_->path(), QStringLiteral("d3-n2.toml"), QStringLiteral("d3-n2.csv"),
                     QStringLiteral("htp-021.toml"));
  }

  void opens_the_job_and_with_it_log_and_procedure() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const OpenCase& open = real.window.session().open();
    QVERIFY(open.has_record());
    QCOMPARE(open.log_path, log_);
    QCOMPARE(open.procedure_path, procedure_);
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Met"));
    const auto* report = real.window.session().report();
    for (const RequirementRow& row : report->requirements) QVERIFY2(!row.margin.empty(), row.id.c_str());
  }

  void hides_a_channel_and_reads_the_others_at_the_pointer() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    auto* pane = real.part<ChannelPane>();
    auto* chart = real.part<ChartPane>();
    QTreeView* list = pane->list();
    list->setFocus();
    list->setCurrentIndex(list->model()->index(0, 0));
    QTest::keyClick(list, Qt::Key_Space);
    QVERIFY(!real.window.session().visible(0));
    QVERIFY(real.window.session().visible(1));

    chart->setFocus();
    chart->stepPointer(1);
    const auto at = chart->pointer();
    QVERIFY(at.has_value());
    const Record& record = *real.window.session().open().analysis.record;
    const auto row = static_cast<std::size_t>(
        std::lower_bound(record.times_s.begin(), record.times_s.end(), *at - 1e-6) - record.times_s.begin());
    double hottest = -1e9;
    double coldest = 1e9;
    for (std::size_t i = 1; i < record.channels.size(); ++i) {
      hottest = std::max(hottest, *record.channels[i].readings.celsius(row));
      coldest = std::min(coldest, *record.channels[i].readings.celsius(row));
    }
    const QString said = pane->readingText();
    QVERIFY2(said.contains(QString::number(hottest, 'f', 1)), qPrintable(said));
    QVERIFY2(said.contains(QString::number(coldest, 'f', 1)), qPrintable(said));
    QVERIFY2(said.contains(QStringLiteral("2 Apr 2031")), qPrintable(said));
  }

  void evaluates_again_after_a_changed_limit_and_reads_nothing_else() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const auto record = real.window.session().open().analysis.record;
    const auto course = real.window.session().open().analysis.course;
    auto* chart = real.part<ChartPane>();
    chart->zoomTime(4.0);
    const auto view = chart->ranges();
    made::procedure(files_->path(), QStringLiteral("htp-021.toml"), 100, 100);
    QTest::keyClick(&real.window, Qt::Key_F5);
    QVERIFY(real.settled());
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Not met"));
    QVERIFY(real.window.session().open().analysis.record == record);
    QVERIFY(real.window.session().open().analysis.course == course);
    QVERIFY(chart->ranges() == view);
  }

  void reads_again_when_the_job_has_changed() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const auto record = real.window.session().open().analysis.record;
    QFile job(job_);
    QVERIFY(job.open(QIODevice::Append));
    job.write("\n[[remark]]\nat = \"2031-04-02 11:02\"\ntext = \"power cut, 4 min\"\n");
    job.close();
    real.window.session().reload();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().open().analysis.record != record);
    QCOMPARE(real.window.session().open().analysis.record->remarks.size(), std::size_t{1});
  }

  void is_refused_in_the_words_of_the_command_line_and_keeps_what_was_open() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const auto before = real.window.session().open().analysis;
    const QString bad = made::write(
        files_->path(), QStringLiteral("bad.toml"),
        QStringLiteral("soakwright = \"procedure 1\"\nnumber = \"X\"\nunit = \"C\"\ncolour = 3\n"
                       "[[stage]]\nkind = \"hold\"\nlow = 620\nhigh = 590\ntime_min = \"1 h\"\n"));
    QVERIFY(real.open({bad}));
    const auto expected = read_procedure(bad.toStdString());
    QVERIFY(!expected.ok());
    QStringList words;
    for (const Problem& problem : expected.problems()) words.append(QString::fromStdString(problem.text()));
    const auto* bar = real.part<ErrorBar>();
    QVERIFY(bar->isVisible());
    QCOMPARE(bar->texts(), words);
    QVERIFY(real.window.session().open().analysis.record == before.record);
    QVERIFY(real.window.session().open().analysis.verdicts == before.verdicts);
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Met"));
    QTest::keyClick(&real.window, Qt::Key_Escape);
    QVERIFY(!bar->isVisible());
  }

  void exports_the_same_result_as_the_command_line_and_a_picture() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QSignalSpy written(&real.window, &MainWindow::exported);
    const QString path = real.folder.filePath(QStringLiteral("result.json"));
    real.window.exportResult(path);
    QVERIFY(written.wait(30'000));
    QFile file(path);
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(file.readAll().toStdString(), result_json(real.window.session().open().analysis));
    const QString picture = real.folder.filePath(QStringLiteral("chart.png"));
    real.window.exportPicture(picture);
    QVERIFY(written.wait(30'000));
    const QImage image(picture);
    QVERIFY(image.width() > 1200 && image.height() > 400);
  }
};

QTEST_MAIN(ContractorPathTest)
#include "contractor_path_test.moc"
