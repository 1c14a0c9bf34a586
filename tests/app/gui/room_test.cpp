// SPDX-License-Identifier: GPL-3.0-or-later
// How the room of the window is shared out: the chart gets at least 55 % of the height, nothing of the import
// settings is cut, and the user's own sizes stay.

#include <QComboBox>
#include <QScrollArea>
#include <QScrollBar>
#include <QSplitter>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class RoomTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path(), made::run_with_dip()); }

  void the_chart_has_most_of_the_height_data() {
    QTest::addColumn<QSize>("size");
    QTest::addColumn<double>("share");
    QTest::newRow("wide") << QSize(1600, 900) << 0.55;
    QTest::newRow("usual") << QSize(1280, 800) << 0.55;
    QTest::newRow("small screen") << QSize(1024, 700) << 0.55;
    QTest::newRow("small window") << QSize(900, 600) << 0.45;
  }

  void the_chart_has_most_of_the_height() {
    QFETCH(QSize, size);
    QFETCH(double, share);
    RealWindow real;
    real.window.resize(size);
    QVERIFY(real.open({case_.log, case_.procedure}));
    // With a finding chosen its details and the review form are there too.
    real.window.session().select({Selection::Kind::finding, 0});
    QTest::qWait(50);
    QCOMPARE(real.window.size(), size);
    const int height = real.part<ChartPane>()->height();
    QVERIFY2(height >= share * size.height(), qPrintable(QString::number(height)));
    QVERIFY(real.part<DetailPanel>()->height() >= 40);
  }

  void sizes_that_the_user_chose_stay() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    QSplitter* splitter = nullptr;
    for (auto* one : real.window.findChildren<QSplitter*>())
      if (one->orientation() == Qt::Vertical && one->isAncestorOf(real.part<ChartPane>())) splitter = one;
    QVERIFY(splitter);
    const int before = splitter->sizes()[1];
    splitter->setSizes({splitter->height() - before - 60, before + 60});
    emit splitter->splitterMoved(splitter->sizes()[0], 1);
    const int chosen = splitter->sizes()[1];
    real.window.resize(1280, 900);
    QTest::qWait(50);
    QVERIFY2(splitter->sizes()[1] >= chosen - 1, qPrintable(QString::number(splitter->sizes()[1])));
  }

  void nothing_of_the_import_settings_is_cut_data() {
    QTest::addColumn<int>("width");
    QTest::newRow("usual") << 1280;
    QTest::newRow("narrow") << 900;
  }

  void nothing_of_the_import_settings_is_cut() {
    QFETCH(int, width);
    RealWindow real;
    real.window.resize(width, 700);
    QVERIFY(real.open({case_.job}));
    real.action(QStringLiteral("Import settings"))->trigger();
    QTest::qWait(50);
    auto* pane = real.part<ImportSettingsPane>();
    for (const auto* area : pane->findChildren<QScrollArea*>())
      QCOMPARE(area->horizontalScrollBar()->maximum(), 0);
    ColumnTable* columns = pane->columns();
    QVERIFY(columns->rowCount() > 0);
    for (int row = 0; row < columns->rowCount(); ++row)
      for (const auto part : {ColumnTable::unit, ColumnTable::kind}) {
        const QWidget* box = columns->cellWidget(row, part);
        QVERIFY(box->width() >= box->sizeHint().width());
        QVERIFY(box->height() >= box->sizeHint().height());
      }
  }
};

QTEST_MAIN(RoomTest)
#include "room_test.moc"
