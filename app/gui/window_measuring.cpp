// SPDX-License-Identifier: GPL-3.0-or-later
// The chart beyond its traces: panes below it, cursors and what lies between them, a time drawn over, units,
// and the keys that lead from place to place.

#include <QAction>
#include <QActionGroup>
#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>
#include <QStatusBar>
#include <QTabWidget>
#include <algorithm>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/between_contents.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/table_copy.h"
#include "app/gui/window_actions.h"
#include "app/gui/window_messages.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kCopyScale = 2.0;
/// Under which a pane is kept as shown or hidden.
QString kept_name(CurveKind kind) {
  switch (kind) {
    case CurveKind::difference:
      return QStringLiteral("difference-pane");
    case CurveKind::spread:
      return QStringLiteral("spread-pane");
    case CurveKind::rate:
      return QStringLiteral("rate-pane");
  }
  return {};
}

}  // namespace

void MainWindow::wireMeasuring() {
  const WindowActions& a = *actions_;
  const auto on = [this](QAction* action, auto&& what) { connect(action, &QAction::triggered, this, what); };
  const auto pane = [this](QAction* action, CurveKind kind, bool at_first) {
    connect(action, &QAction::toggled, this, [this, kind](bool shown) { showCurves(kind, shown); });
    const QByteArray kept = memory_.layout(kept_name(kind));
    action->setChecked(kept.isEmpty() ? at_first : kept == "1");
    showCurves(kind, action->isChecked());
  };
  pane(a.show_spread, CurveKind::spread, true);
  pane(a.show_rate, CurveKind::rate, false);
  pane(a.show_difference, CurveKind::difference, false);
  const QString overview = QStringLiteral("overview");
  connect(a.show_overview, &QAction::toggled, this, [this, overview](bool shown) {
    chart_->showOverview(shown);
    memory_.keepLayout(overview, shown ? "1" : "0");
  });
  a.show_overview->setChecked(memory_.layout(overview) != "0");
  connect(a.full_screen, &QAction::triggered, this,
          [this] { setWindowState(windowState() ^ Qt::WindowFullScreen); });
  on(a.previous_view, [this] { chart_->previousView(); });
  on(a.next_view, [this] { chart_->nextView(); });
  on(a.cursor_a, [this] { chart_->setCursorHere('A'); });
  on(a.cursor_b, [this] { chart_->setCursorHere('B'); });
  on(a.clear_cursors, [this] { chart_->clearCursors(); });
  on(a.copy_between, [this] { copyBetween(); });
  on(a.next_finding, [this] { stepFinding(1); });
  on(a.previous_finding, [this] { stepFinding(-1); });
  on(a.unit_as_specified, [this] { session_.showIn(std::nullopt); });
  on(a.unit_celsius, [this] { session_.showIn(TemperatureUnit::celsius); });
  on(a.unit_fahrenheit, [this] { session_.showIn(TemperatureUnit::fahrenheit); });
  on(a.time_of_recorder, [this] { chart_->countTimeFrom(TimeOrigin::recorder); });
  on(a.time_of_record, [this] { chart_->countTimeFrom(TimeOrigin::record); });
  on(a.time_of_hold, [this] { chart_->countTimeFrom(TimeOrigin::hold); });
  connect(a.both_units, &QAction::toggled, &session_, &Session::certifyInBothUnits);
  on(a.copy_chart, [this] { copyChart(); });
  connect(chart_, &ChartPane::cursorsChanged, this, &MainWindow::showBetween);
  connect(chart_, &ChartPane::copyWanted, this, &MainWindow::copyBetween);
  connect(chart_, &ChartPane::stageKeyed, this, &MainWindow::showStage);
  connect(&curve_work_, &CurveWork::ready, this, [this](const std::shared_ptr<const CurveSet>& curves) {
    if (!session_.open().has_record() || curves->record != session_.open().analysis.record) return;
    curves_ = curves;
    chart_->setCurves(curves);
    showBetween();
    showPointer(chart_->pointer());
  });
}

void MainWindow::showCurves(CurveKind kind, bool shown) {
  chart_->showCurves(kind, shown);
  memory_.keepLayout(kept_name(kind), shown ? "1" : "0");
  channels_->setFigures({chart_->curvesShown(CurveKind::rate), chart_->curvesShown(CurveKind::difference)});
  workOutCurves();
}

/// Only where somebody looks at them.
void MainWindow::workOutCurves() {
  if (!session_.open().has_record()) return;
  WantedCurves wanted;
  wanted.rates = chart_->curvesShown(CurveKind::rate) || (chart_->cursor('A') && chart_->cursor('B'));
  if (chart_->curvesShown(CurveKind::difference)) wanted.differences_from = channelOfReference();
  const bool any = wanted.rates || wanted.differences_from || chart_->curvesShown(CurveKind::spread);
  const bool enough = curves_ && (curves_->has.rates || !wanted.rates) &&
                      (!wanted.differences_from || wanted.differences_from == curves_->has.differences_from);
  if (any && !enough) curve_work_.start(session_.open().analysis, wanted);
}

void MainWindow::showBetween() {
  const auto a_s = chart_->cursor('A');
  const auto b_s = chart_->cursor('B');
  const Report* report = session_.report();
  if (!report || !a_s || !b_s) {
    between_->setContent(between_lines(report, nullptr, 0.0));
    return;
  }
  workOutCurves();
  const ChartCurves* curves = curves_ && curves_->has.rates ? &curves_->curves : nullptr;
  const Between between = measure_between(session_.open().analysis, curves, *a_s, *b_s);
  const bool first = between_->lines().rowCount() == 0;
  between_->setContent(between_lines(report, &between, curves ? curves->window_s : 0.0));
  if (first) lists_->setCurrentWidget(between_);
}

void MainWindow::copyBetween() {
  if (between_->lines().rowCount() == 0) return;
  copy_table(between_->lines());
  statusBar()->showMessage(tr("Copied what lies between A and B"), kDone_ms);
}

void MainWindow::copyChart() {
  auto* copied = new QMimeData;
  copied->setImageData(chart_->picture(kCopyScale).toImage());
  copied->setData(QStringLiteral("image/svg+xml"), chart_->vectorPicture());
  QGuiApplication::clipboard()->setMimeData(copied);
  statusBar()->showMessage(tr("Copied the chart as a picture, in points and in lines"), kDone_ms);
}

void MainWindow::showStage(std::size_t stage) {
  const Report* report = session_.report();
  if (!report) return;
  const auto& segments = report->verdict ? report->chart.stages : report->chart.phases;
  if (stage < segments.size())
    chart_->showPlace(std::pair{segments[stage].from_s, segments[stage].to_s}, std::nullopt, std::nullopt);
}

void MainWindow::stepFinding(int step) {
  const std::vector<std::size_t> listed = finding_pane_->listed();
  if (listed.empty()) return;
  const Selection& chosen = session_.selection();
  const auto now = chosen.kind == Selection::Kind::finding
                       ? std::find(listed.begin(), listed.end(), chosen.index)
                       : listed.end();
  std::ptrdiff_t place = step > 0 ? 0 : static_cast<std::ptrdiff_t>(listed.size()) - 1;
  if (now != listed.end())
    place = std::clamp<std::ptrdiff_t>(now - listed.begin() + step, 0,
                                       static_cast<std::ptrdiff_t>(listed.size()) - 1);
  session_.select({Selection::Kind::finding, listed[static_cast<std::size_t>(place)]});
  statusBar()->showMessage(tr("Finding %1 of %2").arg(place + 1).arg(listed.size()), kDone_ms);
}

}  // namespace soakwright::gui
