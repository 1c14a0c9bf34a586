// SPDX-License-Identifier: GPL-3.0-or-later
// What is copied: the chart in points and in lines, lists as text and as a table, one row or all.

#include <QAction>
#include <QClipboard>
#include <QMimeData>
#include <QSvgRenderer>
#include <QTreeView>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/list_pane.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class CopiesTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static const QMimeData* copied() { return QGuiApplication::clipboard()->mimeData(); }
  static QStringList lines() { return copied()->text().split(u'\n', Qt::SkipEmptyParts); }
  static QAction* inMenu(QWidget* list, const QString& text) {
    for (QAction* action : list->actions())
      if (action->text().remove(u'&') == text) return action;
    return nullptr;
  }
  static void choose(QTreeView* list, int row, Qt::KeyboardModifiers held) {
    const QRect place = list->visualRect(list->model()->index(row, 0));
    QTest::mouseClick(list->viewport(), Qt::LeftButton, held, place.center());
  }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path(), made::run_with_dip()); }
  void init() { QGuiApplication::clipboard()->clear(); }

  void the_chart_is_copied_in_points_and_in_lines() {
    RealWindow real;
    QVERIFY(!real.action(QStringLiteral("Copy chart as picture"))->isEnabled());
    QVERIFY(real.open({case_.job}));
    real.action(QStringLiteral("Copy chart as picture"))->trigger();
    QVERIFY(copied()->hasImage());
    const QImage picture = qvariant_cast<QImage>(copied()->imageData());
    const QByteArray svg = copied()->data(QStringLiteral("image/svg+xml"));
    QVERIFY2(svg.contains("<svg") && svg.contains("TC3"), svg.left(200).constData());
    QSvgRenderer drawn(svg);
    QVERIFY(drawn.isValid());
    QCOMPARE(2 * drawn.viewBox().size(), picture.size());
    // Traces are lines, no picture within the drawing.
    QVERIFY(!svg.contains("<image"));
  }

  void chosen_rows_are_copied_with_their_headers() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* list = real.part<ListPane>(QStringLiteral("Requirements"));
    QVERIFY(list->lines().rowCount() > 3);
    choose(list, 0, Qt::NoModifier);
    choose(list, 2, Qt::ControlModifier);
    QCOMPARE(list->selectionModel()->selectedRows().size(), 2);
    QTest::keyClick(list, Qt::Key_C, Qt::ControlModifier);
    const auto& content = list->lines().content();
    QCOMPARE(lines().size(), 3);
    QVERIFY(lines()[0].startsWith(QStringLiteral("Verdict\tRequirement\t")));
    QVERIFY(lines()[1].startsWith(content.lines[0].cells[0] + u'\t' + content.lines[0].cells[1]));
    QVERIFY(lines()[2].startsWith(content.lines[2].cells[0] + u'\t' + content.lines[2].cells[1]));
    QCOMPARE(copied()->html().count(QStringLiteral("<tr>")), 3);
    QVERIFY(copied()->html().contains(content.lines[2].cells[1].toHtmlEscaped()));
  }

  void one_row_after_the_other_chooses_one_row() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* list = real.part<ListPane>(QStringLiteral("Findings"));
    real.action(QStringLiteral("Next finding"))->trigger();
    real.action(QStringLiteral("Next finding"))->trigger();
    QCOMPARE(list->selectionModel()->selectedRows().size(), 1);
  }

  void a_whole_list_is_copied_from_its_menu() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    for (const char* name : {"Requirements", "Findings", "Deviations"}) {
      auto* list = real.part<ListPane>(QLatin1String(name));
      QCOMPARE(list->contextMenuPolicy(), Qt::ActionsContextMenu);
      QVERIFY(list->lines().rowCount() > 0);
      list->setCurrentIndex(list->model()->index(0, 0));
      inMenu(list, QStringLiteral("Copy table"))->trigger();
      QCOMPARE(lines().size(), static_cast<qsizetype>(list->lines().rowCount()) + 1);
      QCOMPARE(copied()->html().count(QStringLiteral("<tr>")), lines().size());
    }
  }

  void channels_are_copied_with_their_readings() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    real.part<ChartPane>()->stepPointer(0);
    QTreeView* list = real.part<ChannelPane>()->list();
    choose(list, 1, Qt::NoModifier);
    choose(list, 3, Qt::ShiftModifier);
    QTest::keyClick(list, Qt::Key_C, Qt::ControlModifier);
    QCOMPARE(lines().size(), 4);
    QCOMPARE(lines()[0], QStringLiteral("Channel\tAt the pointer"));
    QVERIFY2(lines()[1].startsWith(QStringLiteral("TC2\t")) && lines()[1].size() > 5, qPrintable(lines()[1]));
    QVERIFY(lines()[3].startsWith(QStringLiteral("TC4\t")));
  }
};

QTEST_MAIN(CopiesTest)
#include "copies_test.moc"
