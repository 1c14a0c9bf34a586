// SPDX-License-Identifier: GPL-3.0-or-later
// Measuring on the chart: what the window shows between two cursors is what the core measures there, and
// every place is a key away.

#include <QClipboard>
#include <QMenu>
#include <cmath>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/curve_set.h"
#include "app/gui/chart/tag_places.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/texts/reading_text.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class MeasuringTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_;

  /// Where the plot's mouse events go.
  static QWidget* plot(RealWindow& real) { return real.part<ChartPane>()->findChild<QWidget*>(); }
  static ListPane* between(RealWindow& real) {
    return real.part<ListPane>(QStringLiteral("Between cursors"));
  }
  static QString cell(RealWindow& real, int line, int column) {
    return between(real)->lines().content().lines[static_cast<std::size_t>(line)].cells[column];
  }
  static bool near(const ChartPane::Ranges& a, const ChartPane::Ranges& b) {
    return std::abs(a.from_s - b.from_s) < 1.0 && std::abs(a.to_s - b.to_s) < 1.0;
  }

 private slots:
  void initTestCase() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), made::run_with_dip());
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
  }

  void two_cursors_show_what_lies_between_them_and_ctrl_c_copies_it() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    QCOMPARE(between(real)->lines().rowCount(), 0);
    chart->setCursor('A', 3600.0);
    chart->setCursor('B', 3600.0 * 3);
    QTRY_VERIFY(chart->curves() != nullptr && chart->curves()->has.rates);
    const Between expected =
        measure_between(real.window.session().open().analysis, &chart->curves()->curves, 3600.0, 3600.0 * 3);
    // The time, four channels, the spread.
    QCOMPARE(between(real)->lines().rowCount(), 6);
    QCOMPARE(cell(real, 0, 3), QStringLiteral("2 h"));
    QCOMPARE(cell(real, 2, 1), temperature_text(expected.channels[1].from_c, TemperatureUnit::celsius));
    QVERIFY(expected.channels[1].steepest_rate);
    QVERIFY2(cell(real, 2, 5).contains(QString::number(*expected.channels[1].steepest_rate, 'f', 1)),
             qPrintable(cell(real, 2, 5)));
    QVERIFY(between(real)->isVisible());
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_C, Qt::ControlModifier);
    const QString copied = QGuiApplication::clipboard()->text();
    QVERIFY2(copied.contains(cell(real, 2, 5)) && copied.count(u'\t') == 7 * 5, qPrintable(copied));
    QTest::keyClick(chart, Qt::Key_Escape);
    QCOMPARE(between(real)->lines().rowCount(), 0);
  }

  void cursors_are_set_by_click_and_by_key_and_dragged() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    auto* chart = real.part<ChartPane>();
    const QPoint middle(plot(real)->width() / 2, plot(real)->height() / 3);
    QTest::mouseClick(plot(real), Qt::LeftButton, Qt::ControlModifier, middle);
    QVERIFY(chart->cursor('A'));
    QVERIFY(!chart->cursor('B'));
    QTest::mouseClick(plot(real), Qt::LeftButton, Qt::ShiftModifier, middle + QPoint(150, 0));
    QVERIFY(chart->cursor('B'));
    QVERIFY(*chart->cursor('A') < *chart->cursor('B'));
    const double before = *chart->cursor('B');
    QTest::mousePress(plot(real), Qt::LeftButton, {}, middle + QPoint(150, 0));
    QTest::mouseMove(plot(real), middle + QPoint(190, 0));
    QTest::mouseRelease(plot(real), Qt::LeftButton, {}, middle + QPoint(190, 0));
    QVERIFY(*chart->cursor('B') > before);
    chart->clearCursors();
    chart->stepPointer(10);
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_A);
    QCOMPARE(*chart->cursor('A'), *chart->pointer());
  }

  void panes_below_are_shown_and_hidden_and_follow_the_time_axis() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    QVERIFY(chart->curvesShown(CurveKind::spread));
    QVERIFY(!chart->curvesShown(CurveKind::rate));
    real.action(QStringLiteral("Rate pane"))->trigger();
    QVERIFY(chart->curvesShown(CurveKind::rate));
    QTRY_VERIFY(chart->curves() != nullptr);
    QVERIFY(!chart->curves()->curves.rate_limits.empty());
    real.action(QStringLiteral("Spread pane"))->trigger();
    QVERIFY(!chart->curvesShown(CurveKind::spread));
    // Kept for the next start.
    MainWindow again(real.memory);
    QVERIFY(!again.findChild<ChartPane*>()->curvesShown(CurveKind::spread));
    QVERIFY(again.findChild<ChartPane*>()->curvesShown(CurveKind::rate));
  }

  void views_are_gone_back_to_and_forward_again() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    const auto whole = chart->ranges();
    real.window.session().select({Selection::Kind::requirement, 2});
    QTest::qWait(600);
    const auto evidence = chart->ranges();
    QVERIFY(!near(whole, evidence));
    chart->zoomTime(2.0);
    chart->zoomTime(2.0);
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_Left, Qt::AltModifier);
    QVERIFY(near(chart->ranges(), evidence));
    QTest::keyClick(chart, Qt::Key_Left, Qt::AltModifier);
    QVERIFY(near(chart->ranges(), whole));
    QTest::keyClick(chart, Qt::Key_Right, Qt::AltModifier);
    QVERIFY(near(chart->ranges(), evidence));
  }

  void each_finding_and_each_stage_is_a_key_away() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    const auto* report = real.window.session().report();
    QVERIFY(report->findings.size() > 1);
    const std::vector<std::size_t> listed = real.part<FindingPane>()->listed();
    real.action(QStringLiteral("Next finding"))->trigger();
    QVERIFY(real.window.session().selection() == (Selection{Selection::Kind::finding, listed[0]}));
    real.action(QStringLiteral("Next finding"))->trigger();
    QVERIFY(real.window.session().selection() == (Selection{Selection::Kind::finding, listed[1]}));
    real.action(QStringLiteral("Previous finding"))->trigger();
    QVERIFY(real.window.session().selection() == (Selection{Selection::Kind::finding, listed[0]}));
    auto* chart = real.part<ChartPane>();
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_2);
    const ChartSegment& hold = report->chart.stages[1];
    QVERIFY(chart->ranges().from_s <= hold.from_s && hold.to_s <= chart->ranges().to_s);
    QVERIFY(chart->ranges().to_s - chart->ranges().from_s < 3.0 * (hold.to_s - hold.from_s));
  }

  void fahrenheit_changes_everything_and_back() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    const std::string before = real.window.session().report()->requirements[0].limit;
    real.action(QStringLiteral("°F"))->trigger();
    const auto* report = real.window.session().report();
    QVERIFY(report->unit == TemperatureUnit::fahrenheit);
    QVERIFY(report->chart.unit == TemperatureUnit::fahrenheit);
    for (const RequirementRow& row : report->requirements)
      QVERIFY2(row.text.find("°C") == std::string::npos, row.text.c_str());
    real.part<ChartPane>()->stepPointer(5);
    QVERIFY(real.part<ChannelPane>()->readingText().contains(QStringLiteral("°F")));
    // Stays when the record is evaluated again.
    real.window.session().reload();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().report()->unit == TemperatureUnit::fahrenheit);
    real.action(QStringLiteral("As in the procedure"))->trigger();
    QCOMPARE(real.window.session().report()->requirements[0].limit, before);
  }

  void a_time_drawn_over_with_ctrl_is_excluded_with_a_reason() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    chart->emphasise({1});
    QTimer::singleShot(200, qApp, [] {
      auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
      if (menu) QTest::keyClick(menu, Qt::Key_E);
    });
    answer(giveReason(QStringLiteral("cable repaired")));
    const QPoint from(plot(real)->width() / 2, plot(real)->height() / 3);
    QTest::mousePress(plot(real), Qt::LeftButton, Qt::ControlModifier, from);
    QTest::mouseMove(plot(real), from + QPoint(60, 0));
    QTest::mouseRelease(plot(real), Qt::LeftButton, Qt::ControlModifier, from + QPoint(60, 0));
    QVERIFY(real.settled());
    const auto& exclusions = real.window.session().open().analysis.record->exclusions;
    QCOMPARE(exclusions.size(), std::size_t{1});
    QCOMPARE(exclusions[0].channel, std::size_t{1});
    QCOMPARE(exclusions[0].reason, std::string{"cable repaired"});
    QVERIFY(exclusions[0].to_s > exclusions[0].from_s);
  }

  void names_at_the_ends_of_traces_never_cover_each_other() {
    const std::vector<double> wanted = {10, 10, 11, 50, 50.5, 99, 99, 99};
    const auto places = places_apart(wanted, 12.0, 0.0, 100.0);
    QCOMPARE(places.size(), wanted.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
      QVERIFY(places[i] >= 6.0 - 1e-9 && places[i] <= 94.0 + 1e-9);
      if (i > 0) QVERIFY(places[i] - places[i - 1] >= 12.0 - 1e-9);
    }
    QVERIFY(places_apart({}, 12.0, 0.0, 100.0).empty());
  }

  void tab_into_the_channels_picks_no_trace_out_and_escape_lets_go() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    auto* chart = real.part<ChartPane>();
    auto* list = real.part<ChannelPane>()->list();
    chart->setFocus();
    list->setFocus(Qt::TabFocusReason);
    QTest::qWait(20);
    QVERIFY(!chart->emphasised());
    QTest::keyClick(list, Qt::Key_Down);
    QVERIFY(chart->emphasised());
    QTest::keyClick(list, Qt::Key_Escape);
    QVERIFY(!chart->emphasised());
  }
};

QTEST_MAIN(MeasuringTest)
#include "measuring_test.moc"
