// SPDX-License-Identifier: GPL-3.0-or-later
// The trainee: opens a log alone, sees its course, asks a procedure of it, and goes from finding to
// explanation by keyboard.

#include <QComboBox>
#include <QTabWidget>
#include <QTextBrowser>
#include <QTreeView>
#include <cmath>

#include <qcustomplot.h>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/start_page.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class TraineePathTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_;

 private slots:
  void initTestCase() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), made::run_with_dip());
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
  }

  void starts_with_an_empty_window_that_says_what_to_do() {
    RealWindow real;
    QVERIFY(real.part<StartPage>()->isVisible());
    QVERIFY(real.part<SummaryBar>()->word().isEmpty());
    QVERIFY(!real.action(QStringLiteral("Export report…"))->isEnabled());
  }

  void sees_the_course_of_a_log_alone() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("No verdict"));
    const auto* phases = real.part<ListPane>(QStringLiteral("Phases"));
    QVERIFY(phases->isVisible());
    QStringList kinds;
    for (const ListLine& line : phases->lines().content().lines) kinds.append(line.cells[0].toLower());
    QVERIFY2(kinds.contains(QStringLiteral("heat")) && kinds.contains(QStringLiteral("hold")) &&
                 kinds.contains(QStringLiteral("cool")),
             qPrintable(kinds.join(u',')));
  }

  void asks_a_procedure_of_it_without_reading_the_log_again() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const auto record = real.window.session().open().analysis.record;
    QVERIFY(real.open({procedure_}));
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Not met"));
    QVERIFY(real.window.session().open().analysis.record == record);
  }

  void counts_the_time_from_the_start_of_the_record_or_of_the_hold() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* const chart = real.part<ChartPane>();
    const QCPAxis& axis = *chart->findChild<QCustomPlot*>()->axisRect(0)->axis(QCPAxis::atBottom);
    const auto moment_of = [&](const QString& said) {
      chart->redrawNow();
      const qsizetype tick = axis.tickVectorLabels().indexOf(said);
      return tick < 0 ? std::nan("") : axis.tickVector()[tick];
    };
    const QString of_recorder = axis.label();
    const auto recorders = axis.tickVectorLabels();
    real.action(QStringLiteral("From the start of the record"))->trigger();
    QCOMPARE(axis.label(), QStringLiteral("Time from the start of the record"));
    const Chart& drawn = real.window.session().report()->chart;
    QCOMPARE(moment_of(QStringLiteral("2:00")), drawn.record->begin_s() + 7200.0);
    real.action(QStringLiteral("From the start of the hold"))->trigger();
    QCOMPARE(axis.label(), QStringLiteral("Time from the start of the hold"));
    QVERIFY(drawn.ranges.size() == 1 && drawn.ranges[0].reached);
    QCOMPARE(moment_of(QStringLiteral("2:00")), drawn.ranges[0].from_s + 7200.0);
    QCOMPARE(moment_of(QStringLiteral("−2:00")), drawn.ranges[0].from_s - 7200.0);
    real.action(QStringLiteral("As the recorder shows it"))->trigger();
    QCOMPARE(axis.label(), of_recorder);
    chart->redrawNow();
    QCOMPARE(axis.tickVectorLabels(), recorders);
  }

  void goes_through_the_findings_by_keyboard() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* list = real.part<ListPane>(QStringLiteral("Findings"));
    QVERIFY(list->lines().rowCount() >= 1);
    auto* chart = real.part<ChartPane>();
    const auto whole = chart->ranges();
    // The list stands in a pane with its filter, the pane in a stack, the stack in the tabs.
    QWidget* pane = list->parentWidget();
    auto* tabs = qobject_cast<QTabWidget*>(pane->parentWidget()->parentWidget());
    QVERIFY(tabs);
    tabs->setCurrentWidget(pane);
    list->setFocus();
    QVERIFY(real.window.session().selection() == Selection{});
    QTest::keyClick(list, Qt::Key_Home);
    QTest::keyClick(list, Qt::Key_Down);
    QTest::keyClick(list, Qt::Key_Up);
    const std::size_t first = list->lines().content().lines.front().index;
    QVERIFY((real.window.session().selection() == Selection{Selection::Kind::finding, first}));
    const auto* report = real.window.session().report();
    QVERIFY(real.part<DetailPanel>()->toPlainText().contains(
        QString::fromStdString(report->findings[first].text)));
    QVERIFY(chart->ranges().to_s - chart->ranges().from_s < whole.to_s - whole.from_s);
  }

  void moves_over_the_chart_by_keyboard() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    chart->setFocus();
    const auto whole = chart->ranges();
    QTest::keyClick(chart, Qt::Key_Plus);
    const auto nearer = chart->ranges();
    QVERIFY(nearer.to_s - nearer.from_s < 0.9 * (whole.to_s - whole.from_s));
    QTest::keyClick(chart, Qt::Key_Right);
    QVERIFY(chart->ranges().from_s > nearer.from_s);
    QTest::keyClick(chart, Qt::Key_Up, Qt::ControlModifier);
    QVERIFY(chart->ranges().high_c - chart->ranges().low_c < 0.9 * (whole.high_c - whole.low_c));
    QTest::keyClick(chart, Qt::Key_Period);
    QVERIFY(chart->pointer().has_value());
    const double first = *chart->pointer();
    QTest::keyClick(chart, Qt::Key_Period);
    QCOMPARE(*chart->pointer() - first, 30.0);
    QTest::keyClick(chart, Qt::Key_Home);
    QVERIFY(chart->ranges() == whole);
  }

  void a_click_on_a_stage_of_the_strip_goes_there() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    const auto whole = chart->ranges();
    const auto& stages = real.window.session().report()->chart.stages;
    QVERIFY(stages.size() > 1);
    const ChartSegment& hold = stages[1];
    // The click itself depends on fonts: what the chart says of it is what the window answers to.
    emit chart->stageClicked(1);
    const auto there = chart->ranges();
    QVERIFY(there.to_s - there.from_s < 0.9 * (whole.to_s - whole.from_s));
    QVERIFY(there.from_s < hold.from_s && hold.to_s < there.to_s);
  }

  void zooms_and_drags_with_the_mouse() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    auto* chart = real.part<ChartPane>();
    QWidget* plot = chart->findChild<QWidget*>();
    const auto whole = chart->ranges();
    const QPointF at(0.5 * plot->width(), 0.4 * plot->height());
    QWheelEvent turn(at, plot->mapToGlobal(at), {}, QPoint(0, 480), Qt::NoButton, Qt::NoModifier,
                     Qt::NoScrollPhase, false);
    QApplication::sendEvent(plot, &turn);
    const auto nearer = chart->ranges();
    QVERIFY(nearer.to_s - nearer.from_s < 0.5 * (whole.to_s - whole.from_s));
    QTest::mousePress(plot, Qt::LeftButton, {}, at.toPoint());
    QTest::mouseMove(plot, at.toPoint() + QPoint(40, 0));
    QTest::mouseMove(plot, at.toPoint() + QPoint(120, 0));
    QTest::mouseRelease(plot, Qt::LeftButton, {}, at.toPoint() + QPoint(120, 0));
    QVERIFY(chart->ranges().from_s < nearer.from_s);
    QTest::mouseDClick(plot, Qt::LeftButton, {}, at.toPoint());
    QVERIFY(chart->ranges() == whole);
  }

  void reaches_every_pane_by_key_and_each_has_a_name() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QStringList reached;
    for (int i = 0; i < 4; ++i) {
      real.action(QStringLiteral("Next pane"))->trigger();
      reached.append(QApplication::focusWidget() ? QApplication::focusWidget()->accessibleName() : QString());
    }
    for (const QString& pane : {QStringLiteral("Chart"), QStringLiteral("Requirements"),
                                QStringLiteral("Details of the chosen row"), QStringLiteral("Channels")})
      QVERIFY2(reached.contains(pane), qPrintable(reached.join(u',')));
    for (const QWidget* widget : real.window.findChildren<QWidget*>()) {
      if (!(widget->focusPolicy() & Qt::TabFocus) || !widget->isVisible()) continue;
      const QString text =
          widget->property("text").toString() + widget->property("placeholderText").toString();
      const bool bar = widget->inherits("QTabBar") || widget->inherits("QTabWidget");
      QVERIFY2(bar || !widget->accessibleName().isEmpty() || !text.isEmpty(),
               widget->metaObject()->className());
    }
  }

  void is_told_what_a_finding_means_and_from_when_the_run_was_lost() {
    RealWindow real;
    QVERIFY(
        real.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-118-late-and-dipping/job.toml")}));
    const auto* report = real.window.session().report();
    QVERIFY(report && report->verdict == Verdict::not_met);
    auto* card = real.part<DetailPanel>();
    std::size_t explained = 0;
    for (std::size_t i = 0; i < report->findings.size(); ++i) {
      if (!report->findings[i].explanation) continue;
      ++explained;
      real.window.session().select({Selection::Kind::finding, i});
      const QString said = card->toPlainText();
      const Explanation& explanation = *report->findings[i].explanation;
      for (const std::string& words : {explanation.required, explanation.why, explanation.look_first,
                                       explanation.causes[0], std::string{"common practice, no source"}})
        QVERIFY2(said.contains(QString::fromStdString(words)), words.c_str());
    }
    QVERIFY(explained >= 4);
    // The breaker fell at 12:33:21: too late for a new hold of 95 min before the work cooled.
    for (std::size_t i = 0; i < report->requirements.size(); ++i) {
      if (report->requirements[i].id != "stage-2.hold-time") continue;
      real.window.session().select({Selection::Kind::requirement, i});
      QVERIFY2(card->toPlainText().contains(
                   QStringLiteral("2031-04-09 12:33:21: TC3 left the holding temperature range")),
               qPrintable(card->toPlainText()));
    }
    QCOMPARE(report->chart.deviations.size(), std::size_t{1});
  }
};

QTEST_MAIN(TraineePathTest)
#include "trainee_path_test.moc"
