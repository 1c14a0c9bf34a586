// SPDX-License-Identifier: GPL-3.0-or-later
// A limit dragged on the chart is an edit of the procedure: in its form, not saved, one step to undo.

#include <QFile>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <cmath>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/stage_card.h"
#include "app/gui/panes/procedure_pane.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class DraggedLimitsTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  /// Where the plot's mouse events go.
  static QWidget* plot(RealWindow& real) { return real.part<ChartPane>()->findChild<QWidget*>(); }
  static QString value(RealWindow& real, std::size_t stage, const std::string& key) {
    return real.part<ProcedurePane>()->stages()[stage - 1]->form()->line(key)->text();
  }
  /// Where the pointer is over the limit whose tip begins so; none: over none.
  static std::optional<QPoint> found(RealWindow& real, const QString& tip) {
    QWidget* area = plot(real);
    for (const double share : {0.5, 0.3, 0.7})
      for (int y = 0; y < area->height(); ++y) {
        const QPoint at(static_cast<int>(share * area->width()), y);
        QTest::mouseMove(area, at);
        if (area->cursor().shape() == Qt::SizeVerCursor && area->toolTip().contains(tip)) {
          // In the middle of the few pixels that count as near.
          return at + QPoint(0, 4);
        }
      }
    return std::nullopt;
  }
  static double pixels_per_degree(RealWindow& real) {
    const auto low = found(real, QStringLiteral("Low limit"));
    const auto high = found(real, QStringLiteral("High limit"));
    return low && high ? (low->y() - high->y()) / 30.0 : 0.0;
  }
  static void drag(RealWindow& real, const QPoint& from, int up) {
    QTest::mousePress(plot(real), Qt::LeftButton, {}, from);
    for (int step = 1; step <= 4; ++step) QTest::mouseMove(plot(real), from - QPoint(0, up * step / 4));
  }
  static void letGo(RealWindow& real, const QPoint& from, int up) {
    QTest::mouseRelease(plot(real), Qt::LeftButton, {}, from - QPoint(0, up));
  }
  bool openIn(RealWindow& real) {
    if (!real.open({case_.job})) return false;
    // Of the temperatures only those of the hold, so that a degree is several pixels.
    const ChartPane::Ranges whole = real.part<ChartPane>()->ranges();
    real.part<ChartPane>()->setRanges({whole.from_s, whole.to_s, 560.0, 670.0});
    QTest::qWait(50);
    return true;
  }

 private slots:
  void init() {
    case_ = made::drum_case(files_.path());
    QFile file(case_.procedure);
    QVERIFY(file.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(file.readAll());
    made::write(
        files_.path(), QStringLiteral("htp-021.toml"),
        QString(text).replace(QStringLiteral("high = 620\n"), QStringLiteral("high = 620  # kept\n")));
  }

  void an_edge_of_the_range_changes_the_procedure_in_one_step() {
    RealWindow real;
    QVERIFY(openIn(real));
    const auto from = found(real, QStringLiteral("High limit, stage 2: 620 °C"));
    QVERIFY(from);
    const int up = static_cast<int>(std::lround(10.0 * pixels_per_degree(real)));
    QVERIFY(up > 10);
    const int steps = real.window.session().edits().count();
    const std::string before = real.window.session().procedureText();
    const ChartPane::Ranges view = real.part<ChartPane>()->ranges();
    drag(real, *from, up);
    QCOMPARE(value(real, 2, "high"), QStringLiteral("620"));
    letGo(real, *from, up);
    QVERIFY(real.settled());
    QCOMPARE(value(real, 2, "high"), QStringLiteral("630"));
    QVERIFY(real.part<ChartPane>()->ranges() == view);
    QCOMPARE(real.window.session().edits().count(), steps + 1);
    QVERIFY(real.window.windowTitle().contains(QStringLiteral("not saved")));
    QVERIFY(real.part<ProcedurePane>()->text()->toPlainText().contains(QStringLiteral("high = 630  # kept")));
    QCOMPARE(real.window.session().report()->chart.ranges[0].high_c, std::optional(630.0));
    QVERIFY(found(real, QStringLiteral("High limit, stage 2: 630 °C")));
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().procedureText(), before);
    QVERIFY(!real.window.session().unsaved());
    QCOMPARE(real.window.session().report()->chart.ranges[0].high_c, std::optional(620.0));
  }

  void escape_leaves_the_limit_as_it_was() {
    RealWindow real;
    QVERIFY(openIn(real));
    const auto from = found(real, QStringLiteral("Low limit"));
    QVERIFY(from);
    const ChartPane::Ranges view = real.part<ChartPane>()->ranges();
    drag(real, *from, 40);
    QTest::qWait(50);
    const QImage moved = real.part<ChartPane>()->grab().toImage();
    QTest::keyClick(real.part<ChartPane>(), Qt::Key_Escape);
    QTest::qWait(50);
    QVERIFY(real.part<ChartPane>()->grab().toImage() != moved);
    letGo(real, *from, 40);
    QVERIFY(real.settled());
    QVERIFY(!real.window.session().unsaved());
    QVERIFY(real.part<ChartPane>()->ranges() == view);
    QVERIFY(found(real, QStringLiteral("Low limit, stage 2: 590 °C")));
  }

  void the_edges_of_a_range_do_not_cross() {
    RealWindow real;
    QVERIFY(openIn(real));
    const auto from = found(real, QStringLiteral("Low limit"));
    QVERIFY(from);
    const int up = static_cast<int>(std::lround(45.0 * pixels_per_degree(real)));
    drag(real, *from, up);
    letGo(real, *from, up);
    QVERIFY(real.settled());
    QCOMPARE(value(real, 2, "low"), QStringLiteral("619"));
    QVERIFY(real.window.session().problems().empty());
  }

  void a_level_that_two_stages_share_moves_for_both() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    const auto from = found(real, QStringLiteral("Evaluated above, stages 1, 3: 300 °C"));
    QVERIFY(from);
    drag(real, *from, 20);
    letGo(real, *from, 20);
    QVERIFY(real.settled());
    QVERIFY2(value(real, 1, "above").toInt() > 300, qPrintable(value(real, 1, "above")));
    QCOMPARE(value(real, 1, "above"), value(real, 3, "above"));
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QVERIFY(!real.window.session().unsaved());
  }

  void the_maximum_of_the_record_can_be_dragged() {
    RealWindow real;
    QVERIFY(openIn(real));
    const auto from = found(real, QStringLiteral("Maximum temperature: 650 °C"));
    QVERIFY(from);
    const int down = static_cast<int>(std::lround(-5.0 * pixels_per_degree(real)));
    drag(real, *from, down);
    letGo(real, *from, down);
    QVERIFY(real.settled());
    QCOMPARE(real.part<ProcedurePane>()->form("record")->line("temperature_max")->text(),
             QStringLiteral("645"));
  }

  void without_a_procedure_or_with_a_refused_one_nothing_can_be_dragged() {
    RealWindow real;
    QVERIFY(real.open({case_.log}));
    QVERIFY(!found(real, QStringLiteral("Drag to change")));
    QVERIFY(real.open({case_.job}));
    QVERIFY(found(real, QStringLiteral("Drag to change")));
    QLineEdit* high = real.part<ProcedurePane>()->stages()[1]->form()->line("high");
    high->setText(QStringLiteral("580"));
    QTest::keyClick(high, Qt::Key_Return);
    QVERIFY(real.settled());
    QVERIFY(!real.window.session().problems().empty());
    QVERIFY(!found(real, QStringLiteral("Drag to change")));
  }

  void a_drag_that_begins_elsewhere_moves_the_view() {
    RealWindow real;
    QVERIFY(openIn(real));
    const auto high = found(real, QStringLiteral("High limit"));
    QVERIFY(high);
    const ChartPane::Ranges view = real.part<ChartPane>()->ranges();
    const QPoint from = *high - QPoint(0, 15);
    drag(real, from, 30);
    letGo(real, from, 30);
    QVERIFY(real.part<ChartPane>()->ranges().high_c < view.high_c);
    QVERIFY(!real.window.session().unsaved());
  }
};

QTEST_MAIN(DraggedLimitsTest)
#include "dragged_limits_test.moc"
