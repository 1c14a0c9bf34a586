// SPDX-License-Identifier: GPL-3.0-or-later
// A thermocouple is taken out of the evaluation only with a reason, and everybody sees it: beside the
// verdict, on the first page, and as a grey trace.

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_list.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ExclusionsTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString job_;

  static QString sentence(RealWindow& real) { return real.part<SummaryBar>()->sentence(); }

 private slots:
  void init() {
    made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    job_ = made::job(files_.path(), QStringLiteral("job.toml"), QStringLiteral("d3-n2.csv"),
                     QStringLiteral("htp-021.toml"));
  }

  void not_used_asks_for_a_reason_and_without_one_nothing_changes() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    auto* columns = real.part<ImportSettingsPane>()->columns();
    auto* box = qobject_cast<QComboBox*>(columns->cellWidget(1, ColumnTable::kind));
    const int before = box->currentIndex();
    answer([](QWidget* dialog) {
      // No reason, no button.
      QAbstractButton* button = buttonIn(dialog, QStringLiteral("Do not evaluate"));
      return button && !button->isEnabled() && press(QStringLiteral("Cancel"))(dialog);
    });
    take(box, box->findData(QStringLiteral("off")));
    QTest::qWait(50);
    QVERIFY(real.window.session().wanted().empty());
    QCOMPARE(box->currentIndex(), before);

    answer(giveReason(QStringLiteral("junction came off the work")));
    chooseIn(real, 1, ColumnTable::kind, QStringLiteral("off"));
    QVERIFY(real.window.session().open().analysis.record->channels[1].role == ThermocoupleRole::off);
    const QString said =
        QStringLiteral("Excluded by a person: TC2, whole record (junction came off the work).");
    QVERIFY2(sentence(real).contains(said), qPrintable(sentence(real)));
    QCOMPARE(real.window.session().report()->exclusion.size(), std::size_t{1});
    // Still drawn, and named.
    QVERIFY(real.window.session().visible(1));
    const ChartTrace& trace = real.window.session().report()->chart.traces[1];
    QVERIFY(trace.excluded);
    QCOMPARE(trace.legend, std::string{"TC2 (excluded)"});
    const QColor grey = real.part<ChartPane>()->penOf(1).color();
    QCOMPARE(grey.red(), grey.green());
  }

  void a_part_is_excluded_with_a_reason_and_undone() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    answer([](QWidget* dialog) {
      for (auto* line : dialog->findChildren<QLineEdit*>()) {
        if (line->accessibleName() == u"From") {
          line->setEnabled(true);
          line->setText(QStringLiteral("2031-04-02 09:00:00"));
        }
        if (line->accessibleName() == u"To") line->setText(QStringLiteral("2031-04-02 09:10:00"));
      }
      for (auto* box : dialog->findChildren<QAbstractButton*>())
        if (box->isCheckable() && box->isChecked()) box->click();
      return giveReason(QStringLiteral("welder moved it"))(dialog);
    });
    real.part<ChartPane>()->emphasise({2});
    real.action(QStringLiteral("Exclude…"))->trigger();
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().analysis.record->exclusions.size(), std::size_t{1});
    QVERIFY2(sentence(real).contains(QStringLiteral("Excluded by a person: TC3, ")) &&
                 sentence(real).contains(QStringLiteral("(welder moved it)")),
             qPrintable(sentence(real)));
    real.action(QStringLiteral("Undo TC3 excluded, 2031-04-02 09:00:00 to 2031-04-02 09:10:00: welder "
                               "moved it"))
        ->trigger();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().open().analysis.record->exclusions.empty());
    QVERIFY(!sentence(real).contains(QStringLiteral("Excluded")));
  }

  void evaluated_again_a_thermocouple_loses_its_reason() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    answer(giveReason(QStringLiteral("hangs free")));
    chooseIn(real, 1, ColumnTable::kind, QStringLiteral("air"));
    QVERIFY2(sentence(real).contains(QStringLiteral("TC2, whole record, used as air (hangs free)")),
             qPrintable(sentence(real)));
    writeInto(real, job_);
    chooseIn(real, 1, ColumnTable::kind, QStringLiteral("monitor"));
    QVERIFY(real.window.session().sheetTexts().isEmpty());
    QVERIFY(!sentence(real).contains(QStringLiteral("Excluded")));
  }
};

QTEST_MAIN(ExclusionsTest)
#include "exclusions_test.moc"
