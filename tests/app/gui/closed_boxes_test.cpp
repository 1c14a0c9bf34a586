// SPDX-License-Identifier: GPL-3.0-or-later
// A wheel or a key passing over a closed box changes nothing: each change of the import settings evaluates
// the record again.

#include <QApplication>
#include <QScrollBar>
#include <QWheelEvent>

#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ClosedBoxesTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_;

  static void turn(QWidget* over) {
    const QPointF at(0.5 * over->width(), 0.5 * over->height());
    QWheelEvent notch(at, over->mapToGlobal(at), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    // Only what comes from the system goes on to what lies around the widget.
    QSpontaneKeyEvent::setSpontaneous(&notch);
    QApplication::sendEvent(over, &notch);
  }

 private slots:
  void initTestCase() {
    made::Run run;
    run.channels = 24;
    log_ = made::log(files_.path(), QStringLiteral("wide.csv"), run);
  }

  void neither_wheel_nor_arrows_nor_letters_change_a_closed_box() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    real.action(QStringLiteral("Import settings"))->trigger();
    const auto* sheet = real.part<ImportSettingsPane>();
    std::vector<QComboBox*> boxes;
    for (const char* key :
         {"encoding", "delimiter", "decimal", "dates", "header_line", "time_column", "time"})
      boxes.push_back(sheet->settings()->box(key));
    for (const auto part : {ColumnTable::unit, ColumnTable::kind})
      boxes.push_back(qobject_cast<QComboBox*>(sheet->columns()->cellWidget(2, part)));
    for (QComboBox* box : boxes) {
      const int before = box->currentIndex();
      box->setFocus();
      turn(box);
      for (const Qt::Key key :
           {Qt::Key_Down, Qt::Key_Up, Qt::Key_PageDown, Qt::Key_End, Qt::Key_Home, Qt::Key_S, Qt::Key_C})
        QTest::keyClick(box, key);
      QVERIFY2(box->currentIndex() == before, qPrintable(box->accessibleName()));
      QVERIFY(!box->view()->isVisible());
    }
    QTest::qWait(50);
    QVERIFY(real.window.session().wanted().empty());
    QVERIFY(!real.window.session().busy());
  }

  void a_box_leaves_the_wheel_to_the_table_around_it() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    real.action(QStringLiteral("Import settings"))->trigger();
    auto* columns = real.part<ImportSettingsPane>()->columns();
    QTRY_VERIFY(columns->verticalScrollBar()->maximum() > 0);
    QWidget* box = columns->cellWidget(2, ColumnTable::kind);
    const QPointF at(0.5 * box->width(), 0.5 * box->height());
    QWheelEvent notch(at, box->mapToGlobal(at), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    static_cast<QObject*>(box)->event(&notch);
    QVERIFY(!notch.isAccepted());
  }

  void a_choice_is_made_from_the_opened_list() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    real.action(QStringLiteral("Import settings"))->trigger();
    auto* box = qobject_cast<QComboBox*>(
        real.part<ImportSettingsPane>()->columns()->cellWidget(2, ColumnTable::unit));
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Space);
    QVERIFY(box->view()->isVisible());
    QTest::keyClick(box->view(), Qt::Key_Escape);
    QVERIFY(!box->view()->isVisible());
    QVERIFY(real.window.session().wanted().empty());
    chooseIn(real, 2, ColumnTable::unit, QStringLiteral("F"));
    QVERIFY(real.window.session().open().analysis.record->channels[2].unit == ChannelUnit::fahrenheit);
  }

  void focus_and_scroll_position_stay_when_the_record_was_read_again() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    real.action(QStringLiteral("Import settings"))->trigger();
    auto* columns = real.part<ImportSettingsPane>()->columns();
    QTRY_VERIFY(columns->verticalScrollBar()->maximum() > 0);
    columns->verticalScrollBar()->setValue(columns->verticalScrollBar()->maximum());
    columns->setCurrentCell(20, ColumnTable::name);
    const int scrolled = columns->verticalScrollBar()->value();
    QWidget* box = columns->cellWidget(20, ColumnTable::unit);
    chooseIn(real, 20, ColumnTable::unit, QStringLiteral("F"));
    QVERIFY(columns->cellWidget(20, ColumnTable::unit) == box);
    QVERIFY(real.window.focusWidget() == box);
    QCOMPARE(columns->verticalScrollBar()->value(), scrolled);
    QCOMPARE(columns->currentRow(), 20);
  }
};

QTEST_MAIN(ClosedBoxesTest)
#include "closed_boxes_test.moc"
