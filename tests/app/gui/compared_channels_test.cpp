// SPDX-License-Identifier: GPL-3.0-or-later
// Channels beside each other: what each does at the pointer, several brought forward, groups shown alone, and
// the difference from one of them.

#include <QHeaderView>
#include <QMenu>
#include <QTreeView>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/curve_set.h"
#include "app/gui/panes/channel_groups.h"
#include "app/gui/panes/channel_pane.h"
#include "core/units/printed_quantity.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ComparedChannelsTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static QStringList headers(const QAbstractItemModel& list) {
    QStringList texts;
    for (int column = 0; column < list.columnCount(); ++column)
      texts.append(list.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
    return texts;
  }
  static QString cell(const QAbstractItemModel& list, int row, int column) {
    return list.index(row, column).data().toString();
  }
  /// Triggers the entry of the next menu that opens.
  static void choose(const QString& text) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, text] {
      auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
      if (!menu) return;
      for (QAction* action : menu->actions())
        if (action->text().remove(u'&') == text && action->isEnabled()) action->trigger();
      menu->close();
      timer->deleteLater();
    });
    timer->start(20);
  }
  static std::vector<bool> shown(RealWindow& real) {
    std::vector<bool> channels;
    for (std::size_t i = 0; i < real.window.session().open().analysis.record->channels.size(); ++i)
      channels.push_back(real.window.session().visible(i));
    return channels;
  }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path(), made::run_with_dip()); }

  void the_rate_of_each_channel_stands_beside_its_reading_while_the_rate_pane_is_shown() {
    RealWindow real;
    QVERIFY(real.open({case_.log, case_.procedure}));
    const QAbstractItemModel& list = *real.part<ChannelPane>()->list()->model();
    QCOMPARE(headers(list), (QStringList{"Channel", "At the pointer"}));
    real.action(QStringLiteral("Rate pane"))->trigger();
    QCOMPARE(headers(list), (QStringList{"Channel", "Reading", "Rate, °C/h"}));
    auto* chart = real.part<ChartPane>();
    QTRY_VERIFY(chart->curves() && chart->curves()->has.rates);
    chart->stepPointer(0);
    const auto& record = *real.window.session().open().analysis.record;
    const auto row = std::lower_bound(record.times_s.begin(), record.times_s.end(), *chart->pointer()) -
                     record.times_s.begin();
    for (int channel = 0; channel < list.rowCount(); ++channel) {
      const auto rate = chart->curves()->curves.rates[static_cast<std::size_t>(channel)].celsius(
          static_cast<std::size_t>(row));
      QVERIFY(rate);
      QCOMPARE(cell(list, channel, 2).toStdString(),
               printed_number(HeatingRate::of_celsius_per_hour(*rate), {TemperatureUnit::celsius}, 1));
    }
    real.action(QStringLiteral("Rate pane"))->trigger();
    QCOMPARE(list.columnCount(), 2);
  }

  void several_channels_are_brought_forward_together() {
    RealWindow real;
    QVERIFY(real.open({case_.log, case_.procedure}));
    auto* chart = real.part<ChartPane>();
    auto* list = real.part<ChannelPane>()->list();
    list->setFocus(Qt::MouseFocusReason);
    const auto at = [&](int row) { return list->visualRect(list->model()->index(row, 1)).center(); };
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, at(1));
    QVERIFY(chart->emphasised() == std::size_t{1});
    QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::ControlModifier, at(3));
    QCOMPARE(real.part<ChannelPane>()->chosen(), (std::vector<std::size_t>{1, 3}));
    QCOMPARE(chart->emphasisedTraces(), (std::vector<std::size_t>{1, 3}));
    QVERIFY(!chart->emphasised());
    QTest::keyClick(list, Qt::Key_Escape);
    QVERIFY(chart->emphasisedTraces().empty());
  }

  void the_chosen_channels_or_all_others_are_shown_alone() {
    RealWindow real;
    QVERIFY(real.open({case_.log, case_.procedure}));
    auto* pane = real.part<ChannelPane>();
    QAbstractButton* more = nullptr;
    for (auto* button : pane->findChildren<QAbstractButton*>())
      if (button->text() == QStringLiteral("More…")) more = button;
    QVERIFY(more);
    pane->list()->selectionModel()->select(pane->list()->model()->index(1, 0),
                                           QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
    choose(QStringLiteral("Show only the chosen"));
    more->click();
    QCOMPARE(shown(real), (std::vector<bool>{false, true, false, false}));
    choose(QStringLiteral("Show those that are hidden instead"));
    more->click();
    QCOMPARE(shown(real), (std::vector<bool>{true, false, true, true}));
    choose(QStringLiteral("Show all but the chosen"));
    more->click();
    QCOMPARE(shown(real), (std::vector<bool>{true, false, true, true}));
  }

  void groups_are_by_role_and_by_weld() {
    made::Run run;
    run.set_point = true;
    made::log(files_.path(), QStringLiteral("two-seams.csv"), run);
    const QString job = made::write(
        files_.path(), QStringLiteral("two-seams.toml"),
        QStringLiteral("soakwright = \"job 1\"\nlog = \"two-seams.csv\"\nprocedure = \"htp-021.toml\"\n"
                       "[[weld]]\nnumber = \"A-1\"\n[[weld]]\nnumber = \"A-2\"\n"
                       "[[thermocouple]]\ncolumn = \"TC1\"\nweld = \"A-1\"\n"
                       "[[thermocouple]]\ncolumn = \"TC2\"\nweld = \"A-1\"\n"
                       "[[thermocouple]]\ncolumn = \"TC3\"\nweld = \"A-2\"\n"
                       "[[thermocouple]]\ncolumn = \"TC4\"\nrole = \"spare\"\nspare_for = \"TC3\"\n"));
    RealWindow real;
    QVERIFY(real.open({job}));
    QVERIFY(real.window.session().report());
    QStringList names;
    std::vector<std::vector<bool>> members;
    for (const ChannelGroup& group : channel_groups(*real.window.session().report())) {
      names.append(group.name);
      members.push_back(group.channels);
    }
    const std::size_t count = real.window.session().open().analysis.record->channels.size();
    const auto only = [&](std::vector<std::size_t> channels) {
      std::vector<bool> all(count);
      for (const std::size_t channel : channels) all[channel] = true;
      return all;
    };
    QVERIFY2(names.contains(QStringLiteral("evaluated thermocouples")), qPrintable(names.join(u'|')));
    QCOMPARE(members[static_cast<std::size_t>(names.indexOf(QStringLiteral("spares")))], only({3}));
    QCOMPARE(members[static_cast<std::size_t>(names.indexOf(QStringLiteral("weld A-1")))], only({0, 1}));
    QCOMPARE(members[static_cast<std::size_t>(names.indexOf(QStringLiteral("weld A-2")))], only({2}));
  }

  void differences_are_from_the_channel_that_was_named_and_fit_what_is_in_view() {
    RealWindow real;
    QVERIFY(real.open({case_.log, case_.procedure}));
    auto* chart = real.part<ChartPane>();
    auto* pane = real.part<ChannelPane>();
    real.action(QStringLiteral("Difference pane"))->trigger();
    QTRY_VERIFY(chart->curves() && chart->curves()->has.differences_from == std::size_t{0});
    choose(QStringLiteral("Show differences from TC3"));
    emit pane->menuWanted(2, pane->mapToGlobal(QPoint(10, 10)));
    QTRY_VERIFY(chart->curves() && chart->curves()->has.differences_from == std::size_t{2});
    const QAbstractItemModel& list = *pane->list()->model();
    QCOMPARE(headers(list).last(), QStringLiteral("Diff., °C"));
    chart->stepPointer(0);
    QCOMPARE(cell(list, 2, 2), QStringLiteral("0.0"));
    // The figures leave the names room.
    real.action(QStringLiteral("Rate pane"))->trigger();
    QTRY_VERIFY(pane->list()->columnWidth(0) >= 100);
    QVERIFY(pane->list()->header()->length() <= pane->list()->viewport()->width());
    real.action(QStringLiteral("Rate pane"))->trigger();
    const auto& record = *real.window.session().open().analysis.record;
    const auto row = static_cast<std::size_t>(
        std::lower_bound(record.times_s.begin(), record.times_s.end(), *chart->pointer()) -
        record.times_s.begin());
    const double kelvin =
        *record.channels[1].readings.celsius(row) - *record.channels[2].readings.celsius(row);
    QCOMPARE(cell(list, 1, 2).toStdString(), decimal_text(kelvin, 1));
    // The dip of 25 °C fills the pane when it is looked at, and is not there before it.
    const auto whole = chart->curveRange(CurveKind::difference);
    QVERIFY2(whole.first < -20.0, qPrintable(QString::number(whole.first)));
    auto view = chart->ranges();
    view.to_s = view.from_s + 1800.0;
    chart->setRanges(view);
    const auto early = chart->curveRange(CurveKind::difference);
    QVERIFY2(early.first > -15.0, qPrintable(QString::number(early.first)));
    // Kept for the next start; the channel is the record's own affair.
    MainWindow again(real.memory);
    QVERIFY(again.findChild<ChartPane*>()->curvesShown(CurveKind::difference));
  }
};

QTEST_MAIN(ComparedChannelsTest)
#include "compared_channels_test.moc"
