// SPDX-License-Identifier: GPL-3.0-or-later
// What a pane of the chart and a record laid over it are called is above the plot, where nothing else is
// drawn.

#include <qcustomplot.h>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/curve_set.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class PaneNamesTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static QCustomPlot* plot(RealWindow& real) { return real.part<ChartPane>()->findChild<QCustomPlot*>(); }
  static QImage drawn(RealWindow& real) {
    real.part<ChartPane>()->redrawNow();
    return plot(real)->grab().toImage();
  }
  /// The room above the plot of a pane.
  static QRect above(const QCPAxisRect* pane) {
    return {QPoint(pane->left() + 2, pane->outerRect().top()), QPoint(pane->right() - 2, pane->top() - 2)};
  }
  static int inked(const QImage& picture, const QRect& area) {
    int count = 0;
    for (int y = area.top(); y <= area.bottom(); ++y)
      for (int x = area.left(); x <= area.right(); ++x) count += qGray(picture.pixel(x, y)) < 160 ? 1 : 0;
    return count;
  }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path()); }

  void a_pane_has_its_name_in_room_of_its_own() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    real.action(QStringLiteral("Spread pane"))->setChecked(true);
    real.action(QStringLiteral("Rate pane"))->setChecked(true);
    QTRY_VERIFY(real.part<ChartPane>()->curves() && real.part<ChartPane>()->curves()->has.rates);
    const QImage picture = drawn(real);
    const auto panes = plot(real)->axisRects();
    QVERIFY(panes.size() >= 3);
    for (const int pane : {1, 2}) {
      const QRect room = above(panes[pane]);
      QVERIFY(room.height() >= QFontMetrics(plot(real)->font()).height());
      QVERIFY2(inked(picture, room) > 20, qPrintable(QString::number(pane)));
    }
  }

  void the_name_of_a_record_laid_over_is_not_in_the_plot() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* chart = real.part<ChartPane>();
    const OpenCase& open = real.window.session().open();
    const QImage without = drawn(real);
    QCOMPARE(inked(without, above(plot(real)->axisRects().first())), 0);
    chart->setOverlay(ChartOverlay{open.report, open.traces, 600.0, QStringLiteral("Grey: one record")});
    const QImage first = drawn(real);
    const QCPAxisRect* pane = plot(real)->axisRects().first();
    QVERIFY(inked(first, above(pane)) > 20);
    chart->setOverlay(
        ChartOverlay{open.report, open.traces, 600.0, QStringLiteral("Grey: MMMMM MMMMM MMMMM")});
    const QImage second = drawn(real);
    QVERIFY(first.copy(above(pane)) != second.copy(above(pane)));
    QCOMPARE(first.copy(pane->rect()), second.copy(pane->rect()));
    chart->setOverlay(std::nullopt);
    QCOMPARE(drawn(real), without);
  }
};

QTEST_MAIN(PaneNamesTest)
#include "pane_names_test.moc"
