// SPDX-License-Identifier: GPL-3.0-or-later
// What is offered at a moment of the chart and for a time drawn over on it, and remarks.

#include <QAction>
#include <QMenu>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/parts/remark_dialog.h"
#include "app/gui/texts/reading_text.h"
#include "app/gui/texts/window_text.h"
#include "app/gui/window_actions.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {

void MainWindow::wireMoments() {
  connect(chart_, &ChartPane::timeDrawn, this, &MainWindow::offerForTime);
  connect(chart_, &ChartPane::menuWanted, this, &MainWindow::offerForMoment);
  connect(actions_->add_remark, &QAction::triggered, this, [this] { askForRemark(chart_->momentChosen()); });
}

void MainWindow::askForRemark(double at_s) {
  if (!session_.open().has_record() || session_.open().read_only()) return;
  RemarkDialog dialog(*session_.open().analysis.record, at_s, this);
  if (dialog.exec() == QDialog::Accepted) session_.change(dialog.change());
}

void MainWindow::offerForMoment(double at_s, std::optional<std::size_t> trace, const QPoint& at) {
  const Report* report = session_.report();
  if (!report) return;
  QMenu menu(this);
  const auto offer = [&](const QString& text, auto&& act) {
    QAction* action = menu.addAction(text);
    connect(action, &QAction::triggered, this, act);
    return action;
  };
  const bool editable = !session_.open().read_only();
  const QString moment = moment_text(*report->chart.record, at_s);
  offer(tr("Add a &remark at %1…").arg(moment), [this, at_s] { askForRemark(at_s); })->setVisible(editable);
  if (trace) {
    const std::size_t channel = report->chart.traces[*trace].channel;
    const QString name = menu_text(pdf::shown_text(report->chart.traces[*trace].name));
    offer(tr("&Exclude %1…").arg(name), [this, channel] {
      askToExclude(channel, std::nullopt);
    })->setVisible(editable);
    offer(tr("Show &differences from %1").arg(name), [this, channel] { showDifferencesFrom(channel); });
  }
  menu.addSeparator();
  offer(tr("Set cursor &A here"), [this, at_s] { chart_->setCursor('A', at_s); });
  offer(tr("Set cursor &B here"), [this, at_s] { chart_->setCursor('B', at_s); });
  menu.addSeparator();
  menu.addActions({actions_->reset_view, actions_->previous_view, actions_->fit_temperature});
  menu.addSeparator();
  menu.addAction(actions_->copy_chart);
  menu.exec(at);
}

void MainWindow::offerForTime(double from_s, double to_s, std::optional<std::size_t> trace,
                              const QPoint& at) {
  const Report* report = session_.report();
  if (!report) return;
  QMenu menu(this);
  QAction* zoom = menu.addAction(tr("&Zoom to this time"));
  QAction* measure = menu.addAction(tr("&Measure from A to B"));
  const QString name = trace ? menu_text(pdf::shown_text(report->chart.traces[*trace].name)) : QString();
  QAction* exclude =
      menu.addAction(trace ? tr("&Exclude %1 here…").arg(name) : tr("&Exclude a thermocouple here…"));
  exclude->setVisible(!session_.open().read_only());
  const QAction* chosen = menu.exec(at);
  if (chosen == zoom) {
    const ChartPane::Ranges now = chart_->ranges();
    chart_->setRanges({from_s, to_s, now.low_c, now.high_c});
  } else if (chosen == measure) {
    chart_->setCursor('A', from_s);
    chart_->setCursor('B', to_s);
  } else if (chosen == exclude) {
    askToExclude(trace ? std::optional(report->chart.traces[*trace].channel) : std::nullopt,
                 std::pair{from_s, to_s});
  }
}

}  // namespace soakwright::gui
