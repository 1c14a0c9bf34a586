// SPDX-License-Identifier: GPL-3.0-or-later
// The record beside something else: another record over it, the required cycle, its deviations in order of
// time, the same record under other evaluation settings.

#include <QLineEdit>
#include <QPushButton>
#include <QTabWidget>
#include <cmath>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/previous_records_dialog.h"
#include "app/gui/panes/settings_comparison.h"
#include "app/gui/parts/choice_box.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/message_strip.h"
#include "core/report/record_overlay.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ComparingTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, dipped_, fast_, procedure_, strict_;

  static bool compare(RealWindow& real, const QString& path) {
    real.window.compareWith(path);
    return QTest::qWaitFor([&real] { return !real.window.otherRecord().busy(); }, 60'000);
  }
  static const ListContent& deviations(RealWindow& real) {
    return real.part<ListPane>(QStringLiteral("Deviations"))->lines().content();
  }
  static double hold_start(const Analysis& analysis) {
    return analysis.verdicts->stages[1].continuous->first;
  }

 private slots:
  void initTestCase() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    dipped_ = made::log(files_.path(), QStringLiteral("d3-n3.csv"), made::run_with_dip());
    made::Run fast;
    fast.heating = 130.0;
    fast_ = made::log(files_.path(), QStringLiteral("d3-n4.csv"), fast);
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    strict_ = made::procedure(files_.path(), QStringLiteral("htp-022.toml"), 100, 100);
  }

  // At 110 °C/h 590 °C are reached 570 / 110 h after the start, at 130 °C/h after 570 / 130 h.
  void another_log_lies_over_the_record_with_both_holds_beginning_together() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* chart = real.part<ChartPane>();
    const auto alone = chart->ranges();
    QVERIFY(compare(real, fast_));
    QVERIFY(chart->overlay());
    const ChartOverlay overlay = *chart->overlay();
    const double expected = (570.0 / 110.0 - 570.0 / 130.0) * 3600.0;
    QVERIFY2(std::abs(overlay.offset_s - expected) < 60.0, qPrintable(QString::number(overlay.offset_s)));
    const auto other = real.window.otherRecord().get();
    QVERIFY(other->analysis.verdicts);
    QCOMPARE(hold_start(other->analysis) + overlay.offset_s,
             hold_start(real.window.session().open().analysis));
    QVERIFY2(overlay.name.contains(QStringLiteral("d3-n4.csv")) &&
                 overlay.name.contains(QStringLiteral("aligned on the start of the hold")),
             qPrintable(overlay.name));
    // All of it can be seen, and the verdict is that of the open record alone.
    QVERIFY(chart->ranges().from_s <= alone.from_s);
    QVERIFY(chart->ranges().to_s >= alone.to_s);
    QVERIFY(real.window.session().report()->verdict == Verdict::met);
    QVERIFY(!real.window.session().unsaved());
    const QImage over = chart->picture(1.0).toImage();
    real.action(QStringLiteral("Stop comparing"))->trigger();
    QVERIFY(!chart->overlay());
    QVERIFY(!real.action(QStringLiteral("Stop comparing"))->isEnabled());
    QVERIFY(chart->picture(1.0).toImage() != over);
  }

  void it_follows_another_procedure_and_goes_with_the_record() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    QVERIFY(compare(real, fast_));
    auto* chart = real.part<ChartPane>();
    QVERIFY(chart->overlay()->name.contains(QStringLiteral("longest recorded hold")));
    QVERIFY(real.open({procedure_}));
    QTRY_VERIFY(chart->overlay()->name.contains(QStringLiteral("aligned on the start of the hold")));
    real.window.session().closeAll();
    QVERIFY(!chart->overlay());
    QVERIFY(!real.window.otherRecord().get());
  }

  void what_is_no_log_is_refused_and_what_was_compared_stays() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(compare(real, fast_));
    QVERIFY(
        compare(real, made::write(files_.path(), QStringLiteral("notes.csv"), QStringLiteral("no log\n"))));
    QVERIFY(real.part<ErrorBar>()->isVisible());
    QVERIFY(real.part<ChartPane>()->overlay()->name.contains(QStringLiteral("d3-n4.csv")));
  }

  void the_required_cycle_is_drawn_and_can_be_hidden() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    auto* chart = real.part<ChartPane>();
    QVERIFY(!chart->required());
    QVERIFY(real.open({procedure_}));
    QVERIFY(chart->required());
    QCOMPARE(chart->required()->ramps.size(), std::size_t{2});
    QCOMPARE(chart->required()->holds.size(), std::size_t{1});
    const QImage drawn = chart->picture(1.0).toImage();
    real.action(QStringLiteral("Required cycle"))->trigger();
    QVERIFY(!chart->required());
    QVERIFY(chart->picture(1.0).toImage() != drawn);
    MainWindow again(real.memory);
    QVERIFY(!again.findChild<ChartPane*>()->required());
  }

  void deviations_are_listed_in_order_of_time_below_the_first() {
    RealWindow real;
    QVERIFY(
        real.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-118-late-and-dipping/job.toml")}));
    const Report& report = *real.window.session().report();
    const auto& lines = deviations(real).lines;
    QVERIFY(lines.size() > 2);
    QVERIFY(lines[0].heading);
    QVERIFY2(lines[0].cells[0].contains(QString::fromStdString(report.first_deviation)),
             qPrintable(lines[0].cells[0]));
    double before = -1.0;
    for (std::size_t i = 1; i < lines.size(); ++i) {
      QVERIFY(report.findings[lines[i].index].explanation);
      for (const ChartMark& mark : report.chart.marks) {
        if (mark.finding != lines[i].index) continue;
        QVERIFY(mark.from_s >= before);
        before = mark.from_s;
      }
    }
    // Going through them stays in this list, with the explanation beside it.
    auto* list = real.part<ListPane>(QStringLiteral("Deviations"));
    auto* tabs = qobject_cast<QTabWidget*>(list->parentWidget()->parentWidget());
    QVERIFY(tabs);
    tabs->setCurrentWidget(list);
    emit list->chosen(lines[2].index);
    QVERIFY(tabs->currentWidget() == list);
    QVERIFY((real.window.session().selection() == Selection{Selection::Kind::finding, lines[2].index}));
    QVERIFY(real.part<DetailPanel>()->toPlainText().contains(
        QString::fromStdString(report.findings[lines[2].index].explanation->look_first)));
  }

  void a_record_that_meets_everything_has_no_deviation() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(deviations(real).lines.empty());
    QCOMPARE(deviations(real).when_empty, QStringLiteral("No deviation: every limit is met."));
  }

  // The dip lasts 12 min: with an excursion of 15 min allowed the hold of 2 h is one, 100 min are required.
  void other_evaluation_settings_stand_beside_the_procedures_own() {
    RealWindow real;
    QVERIFY(real.open({dipped_, procedure_}));
    real.action(QStringLiteral("With other evaluation settings…"))->trigger();
    auto* dialog = real.part<SettingsComparison>();
    QVERIFY(dialog && dialog->isVisible());
    const auto row = [&dialog]() -> QStringList {
      for (const ListLine& line : dialog->requirements()->lines().content().lines)
        if (line.cells[0] == u"Hold time") return line.cells;
      return {};
    };
    QCOMPARE(row()[5], QStringLiteral("Not met"));
    QCOMPARE(row()[7], QStringLiteral("Not met"));
    QLineEdit* allowed = dialog->settings()->line("excursion_allowed");
    const auto type = [&](const QString& text) {
      allowed->setText(text);
      QTest::keyClick(allowed, Qt::Key_Return);
      return QTest::qWaitFor([&] { return !dialog->busy(); }, 60'000);
    };
    QVERIFY(type(QStringLiteral("15 min")));
    QCOMPARE(row()[5], QStringLiteral("Not met"));
    QCOMPARE(row()[7], QStringLiteral("Met"));
    // What cannot be evaluated is said, and the last comparison stays.
    QVERIFY(type(QStringLiteral("soon")));
    QVERIFY2(dialog->problem().contains(QStringLiteral("excursion_allowed")), qPrintable(dialog->problem()));
    QCOMPARE(row()[7], QStringLiteral("Met"));
    QVERIFY(real.window.session().report()->verdict == Verdict::not_met);
    QVERIFY(!real.window.session().unsaved());
  }

  void a_job_of_several_records_says_so_and_shows_each() {
    RealWindow real;
    auto* const action = real.action(QStringLiteral("Previous records…"));
    auto* const strip = real.part<MessageStrip>(QStringLiteral("Previous records"));
    QVERIFY(action && strip);
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(!action->isEnabled() && strip->isHidden());
    QVERIFY(real.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-128-over-two-days/job.toml")}));
    QVERIFY(strip->isVisible());
    QVERIFY2(strip->text().contains(QStringLiteral("lug-day-1.csv")), qPrintable(strip->text()));
    strip->button(MessageStrip::kFirstButton)->click();
    auto* const previous = real.part<PreviousRecordsDialog>();
    QVERIFY(previous && previous->isVisible());
    QCOMPARE(previous->choice()->count(), 1);
    const Report& first = *real.window.session().report()->previous_records.front();
    QCOMPARE(previous->requirements()->lines().rowCount(), static_cast<int>(first.requirements.size()));
    QCOMPARE(previous->notices()->lines().rowCount(), static_cast<int>(first.notices.size()));
    // All of that day is on its chart.
    const Record& record = *first.chart.record;
    QVERIFY(&record != real.window.session().report()->chart.record.get());
    QVERIFY(previous->chart()->ranges().from_s <= record.begin_s());
    QVERIFY(previous->chart()->ranges().to_s >= record.end_s());
    // Another case has none: the window about them goes.
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(!action->isEnabled() && strip->isHidden() && !previous->isVisible());
  }
};

QTEST_MAIN(ComparingTest)
#include "comparing_test.moc"
