// SPDX-License-Identifier: GPL-3.0-or-later
// Moments of the record: remarks at them, the strip of the whole record that leads to them, and text found in
// lists.

#include <QLineEdit>
#include <QMenu>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/time_overview.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/find_bar.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class MomentsTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static std::function<bool(QWidget*)> write_remark(const QString& text) {
    return [text](QWidget* dialog) {
      for (auto* line : dialog->findChildren<QLineEdit*>())
        if (line->accessibleName() == u"Remark") line->setText(text);
      QAbstractButton* add = buttonIn(dialog, QStringLiteral("Add"));
      if (!add || !add->isEnabled()) return false;
      add->click();
      return true;
    };
  }
  static QWidget* plot(RealWindow& real) { return real.part<ChartPane>()->findChild<QWidget*>(); }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path(), made::run_with_dip()); }

  void a_remark_is_added_at_the_reading_line_and_undone() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* chart = real.part<ChartPane>();
    chart->stepPointer(0);
    const double at_s = *chart->pointer();
    const std::size_t before = real.window.session().report()->chart.remarks.size();
    answer(write_remark(QStringLiteral("power cut, 4 min")));
    real.action(QStringLiteral("Add remark…"))->trigger();
    QVERIFY(real.settled());
    const auto& remarks = real.window.session().report()->chart.remarks;
    QCOMPARE(remarks.size(), before + 1);
    QVERIFY(remarks.back().text.find("power cut, 4 min") != std::string::npos);
    QVERIFY2(std::abs(remarks.back().at_s - at_s) < 1.0,
             qPrintable(QString::number(remarks.back().at_s - at_s)));
    QVERIFY(real.window.session().unsaved());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().report()->chart.remarks.size(), before);
  }

  void without_words_there_is_no_remark() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    bool enabled = true;
    answer([&](QWidget* dialog) {
      enabled = buttonIn(dialog, QStringLiteral("Add"))->isEnabled();
      static_cast<QDialog*>(dialog)->reject();
      return true;
    });
    real.action(QStringLiteral("Add remark…"))->trigger();
    QVERIFY(!enabled);
    QVERIFY(!real.window.session().unsaved());
  }

  void the_right_button_offers_what_can_be_done_at_a_moment() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    QStringList offered;
    QTimer::singleShot(200, qApp, [&offered] {
      auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
      if (!menu) return;
      for (QAction* action : menu->actions()) {
        offered.append(action->text().remove(u'&'));
        if (offered.last() == u"Set cursor A here") action->trigger();
      }
      menu->close();
    });
    const QPoint middle(plot(real)->width() / 2, 40);
    QTest::mouseClick(plot(real), Qt::RightButton, {}, middle);
    QVERIFY2(offered.size() > 5 && offered.first().startsWith(QStringLiteral("Add a remark at ")),
             qPrintable(offered.join(u'|')));
    QVERIFY(real.part<ChartPane>()->cursor('A'));
  }

  void dragging_the_frame_of_the_overview_moves_the_view_and_its_ends_widen_it() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* chart = real.part<ChartPane>();
    auto* overview = real.part<TimeOverview>();
    QVERIFY(overview->isVisible());
    const auto whole = chart->ranges();
    auto view = whole;
    view.to_s = view.from_s + 0.25 * (whole.to_s - whole.from_s);
    chart->setRanges(view);
    QTest::qWait(30);
    const auto drag = [&](double from_s, double to_s) {
      const int y = overview->height() / 2;
      const QPoint from(static_cast<int>(std::lround(overview->x(from_s))), y);
      const QPoint to(static_cast<int>(std::lround(overview->x(to_s))), y);
      QTest::mousePress(overview, Qt::LeftButton, {}, from);
      QTest::mouseMove(overview, to);
      QTest::mouseRelease(overview, Qt::LeftButton, {}, to);
    };
    const double step = 0.1 * (whole.to_s - whole.from_s);
    const double pixel = (whole.to_s - whole.from_s) / overview->width() * 2.0;
    const double middle = 0.5 * (view.from_s + view.to_s);
    drag(middle, middle + 3.0 * step);
    const auto moved = chart->ranges();
    QVERIFY(std::abs(moved.from_s - (view.from_s + 3.0 * step)) < 2.0 * pixel);
    QVERIFY(std::abs((moved.to_s - moved.from_s) - (view.to_s - view.from_s)) < pixel);
    drag(moved.to_s, moved.to_s + step);
    QVERIFY(std::abs(chart->ranges().to_s - (moved.to_s + step)) < 2.0 * pixel);
    QCOMPARE(chart->ranges().from_s, moved.from_s);
    // A press beside the frame brings it there; it never leaves the record.
    drag(whole.to_s, whole.to_s);
    QVERIFY(std::abs(chart->ranges().to_s - whole.to_s) < 1e-6);
    QCOMPARE(chart->ranges().low_c, whole.low_c);
    real.action(QStringLiteral("Overview of the record"))->trigger();
    QVERIFY(!overview->isVisible());
    MainWindow again(real.memory);
    again.show();
    again.session().openFiles({case_.job});
    QVERIFY(QTest::qWaitFor([&] { return again.session().report() != nullptr; }, 10'000));
    QVERIFY(!again.findChild<TimeOverview*>()->isVisible());
  }

  void text_is_found_in_the_list_that_is_shown_and_leads_to_its_place() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* bar = real.part<FindBar>();
    QVERIFY(!bar->isVisible());
    real.action(QStringLiteral("Find in the list…"))->trigger();
    QVERIFY(bar->isVisible());
    const auto chosen_text = [&] {
      const Selection& chosen = real.window.session().selection();
      return chosen.kind == Selection::Kind::requirement
                 ? QString::fromStdString(real.window.session().report()->requirements[chosen.index].label)
                 : QString();
    };
    QTest::keyClicks(bar->line(), QStringLiteral("HEATING r"));
    QCOMPARE(chosen_text(), QStringLiteral("Heating rate"));
    bar->line()->clear();
    // Enter goes on, Shift+Enter back, both from one end to the other.
    bar->line()->setText(QStringLiteral("rate"));
    QStringList met;
    for (int i = 0; i < 8; ++i) {
      met.append(chosen_text());
      QTest::keyClick(bar->line(), Qt::Key_Return);
    }
    QVERIFY2(met.contains(QStringLiteral("Heating rate")) && met.contains(QStringLiteral("Cooling rate")),
             qPrintable(met.join(u'|')));
    const QString here = chosen_text();
    QTest::keyClick(bar->line(), Qt::Key_Return);
    QTest::keyClick(bar->line(), Qt::Key_Return, Qt::ShiftModifier);
    QCOMPARE(chosen_text(), here);
    bar->line()->setText(QStringLiteral("no such words"));
    QCOMPARE(bar->said(), QStringLiteral("Not in this list"));
    QTest::keyClick(bar->line(), Qt::Key_Escape);
    QVERIFY(!bar->isVisible());
    QVERIFY(real.part<ListPane>(QStringLiteral("Requirements"))->hasFocus());
  }
};

QTEST_MAIN(MomentsTest)
#include "moments_test.moc"
