// SPDX-License-Identifier: GPL-3.0-or-later
// The chart and its verdicts, in both palettes.

#include <QLineEdit>
#include <QScrollBar>
#include <QTreeView>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/curve_set.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/parts/find_bar.h"
#include "app/gui/parts/preferences_dialog.h"
#include "app/gui/parts/remark_dialog.h"
#include "app/gui/texts/help_text.h"
#include "tests/app/gui/pictured_states.h"

namespace soakwright::gui::pictured {

void verdict_states(const Files& f) {
  state(QStringLiteral("01-empty"), [](RealWindow&) {});
  state(QStringLiteral("02-waiting-for-a-log"), [&](RealWindow& r) { r.open({f.procedure}); });
  state(QStringLiteral("03-loading"), [&](RealWindow& r) {
    r.window.session().openFiles({f.large, f.procedure});
    QTest::qWait(60);
    for (int i = 0; i < 40 && r.window.session().busy(); ++i) QTest::qWait(5);
  });
  state(QStringLiteral("04-log-alone"), [&](RealWindow& r) { r.open({f.clean}); });
  state(QStringLiteral("05-met"), [&](RealWindow& r) { r.open({f.job}); });
  state(QStringLiteral("06-not-met-rate-chosen"), [&](RealWindow& r) {
    r.open({f.clean, f.strict});
    choose(r, "stage-1.heating-rate");
  });
  state(QStringLiteral("07-not-met-hold-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.hold-time");
  });
  state(QStringLiteral("08-spread-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.spread");
  });
  state(QStringLiteral("09-finding-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.window.session().select({Selection::Kind::finding, 0});
  });
  state(QStringLiteral("10-inconclusive"), [&](RealWindow& r) {
    r.open({f.cut, f.procedure});
    choose(r, "stage-2.hold-time");
  });
  state(QStringLiteral("11-refused"), [&](RealWindow& r) {
    r.open({f.job});
    r.open({f.bad});
  });
}

void chart_states(const Files& f) {
  state(QStringLiteral("13-hidden-channels"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.window.session().setVisible(0, false);
    r.window.session().setVisible(2, false);
    r.part<ChartPane>()->stepPointer(0);
  });
  state(QStringLiteral("14-24-channels"), [&](RealWindow& r) {
    r.open({f.many, f.procedure});
    r.part<ChartPane>()->stepPointer(0);
  });
  state(QStringLiteral("15-24-channels-rate"), [&](RealWindow& r) {
    r.open({f.many, f.procedure});
    choose(r, "stage-1.heating-rate");
  });
  state(QStringLiteral("16-small-window"), [&](RealWindow& r) {
    r.window.resize(900, 600);
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.excursion-time");
  });
  state(QStringLiteral("17-keys"), [&](RealWindow& r) {
    r.open({f.job});
    show_text(&r.window, QStringLiteral("Keyboard and mouse"), keys_text());
  });
  state(QStringLiteral("18-guarded-budget"), [&](RealWindow& r) {
    r.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-117-stress-relief/job-guarded.toml")});
    choose(r, "stage-2.over-temperature");
    QScrollBar* down = r.part<DetailPanel>()->verticalScrollBar();
    down->setValue(down->maximum() * 2 / 5);
  });
  state(QStringLiteral("49-small-screen"), [&](RealWindow& r) {
    r.window.resize(1024, 700);
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.hold-time");
  });
}

namespace {

/// Two thermocouples brought forward, rates and differences from one of them, in the hold alone.
void compare_channels(RealWindow& r, const Files& f) {
  r.open({f.dip, f.procedure});
  for (const char* pane : {"Rate pane", "Difference pane"}) r.action(QLatin1String(pane))->setChecked(true);
  auto* chart = r.part<ChartPane>();
  if (!QTest::qWaitFor([&] { return chart->curves() && chart->curves()->has.differences_from; }, 10'000))
    return;
  const ChartRange& hold = r.window.session().report()->chart.ranges.front();
  auto view = chart->ranges();
  view.from_s = hold.from_s - 1800.0;
  view.to_s = hold.from_s + 3600.0;
  chart->setRanges(view);
  chart->fitTemperature();
  for (const int row : {0, 1})
    r.part<ChannelPane>()->list()->selectionModel()->select(
        r.part<ChannelPane>()->list()->model()->index(row, 0),
        QItemSelectionModel::Select | QItemSelectionModel::Rows);
  chart->stepPointer(0);
}

void find_in_list(RealWindow& r, const Files& f) {
  r.open({f.dip, f.procedure});
  r.action(QStringLiteral("Find in the list…"))->trigger();
  QTest::keyClicks(r.part<FindBar>()->line(), QStringLiteral("cooling"));
}

}  // namespace

void channel_states(const Files& f, const QString& dark) {
  state(dark + QStringLiteral("80-compared-channels"), [&](RealWindow& r) { compare_channels(r, f); });
  state(dark + QStringLiteral("81-find-in-the-list"), [&](RealWindow& r) { find_in_list(r, f); });
  if (const QString name = dark + QStringLiteral("83-preferences"); is_wanted(name)) {
    PreferencesDialog dialog({});
    keep(dialog, name);
  }
  if (const QString name = dark + QStringLiteral("84-remark"); is_wanted(name)) {
    RealWindow r;
    r.open({f.dip, f.procedure});
    RemarkDialog dialog(*r.window.session().open().analysis.record, 18'000.0);
    keep(dialog, name);
  }
  state(dark + QStringLiteral("82-compared-small-screen"), [&](RealWindow& r) {
    r.window.resize(1024, 700);
    compare_channels(r, f);
  });
}

void dark_states(const Files& f) {
  state(QStringLiteral("20-dark-met"), [&](RealWindow& r) { r.open({f.job}); });
  state(QStringLiteral("21-dark-hold-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.hold-time");
  });
  state(QStringLiteral("22-dark-import-settings"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.action(QStringLiteral("Import settings"))->trigger();
  });
  state(QStringLiteral("23-dark-import-refused-log"), [&](RealWindow& r) { r.open({f.either}); });
  state(QStringLiteral("24-dark-import-changed"), [&](RealWindow& r) { change_by_hand(r, f); });
  state(QStringLiteral("25-dark-import-time-column"), [&](RealWindow& r) { show_columns(r, f); });
  state(QStringLiteral("26-dark-empty"), [](RealWindow&) {});
  state(QStringLiteral("27-dark-refused"), [&](RealWindow& r) {
    r.open({f.job});
    r.open({f.bad});
  });
  state(QStringLiteral("50-dark-procedure"), [&](RealWindow& r) { show_procedure(r, f); });
  state(QStringLiteral("51-dark-job-heat"), [&](RealWindow& r) { show_heat(r, f); });
  state(QStringLiteral("52-dark-another-record"), [&](RealWindow& r) { lay_over(r, f); });
  state(QStringLiteral("28-dark-channels"), [&](RealWindow& r) { r.open({f.many, f.procedure}); });
}

}  // namespace soakwright::gui::pictured
