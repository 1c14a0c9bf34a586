// SPDX-License-Identifier: GPL-3.0-or-later
// The channels: which are shown, brought forward, and compared with one of them.

#include <QAction>
#include <QMenu>
#include <algorithm>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/channel_groups.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/parts/table_copy.h"
#include "app/gui/texts/window_text.h"
#include "app/gui/window_actions.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {

void MainWindow::wireChannels() {
  connect(channels_, &ChannelPane::tracesChosen, this, &MainWindow::pickTraces);
  connect(channels_, &ChannelPane::menuWanted, this, &MainWindow::offerForTrace);
  connect(channels_, &ChannelPane::groupsWanted, this, [this](const QPoint& at) {
    QMenu menu(this);
    addGroups(menu);
    menu.exec(at);
  });
  connect(channels_, &ChannelPane::visibleWanted, &session_, &Session::setVisible);
  connect(channels_, &ChannelPane::allWanted, &session_, &Session::setAllVisible);
  connect(chart_, &ChartPane::traceClicked, this, [this](std::optional<std::size_t> trace) {
    pickTraces(trace ? std::vector{*trace} : std::vector<std::size_t>{});
  });
}

void MainWindow::pickTraces(const std::vector<std::size_t>& traces) {
  chart_->emphasise(traces);
  channels_->markTraces(traces);
}

/// The one that was named, else the control thermocouple, else the first that is evaluated.
std::optional<std::size_t> MainWindow::channelOfReference() const {
  if (!session_.open().has_record()) return std::nullopt;
  const std::vector<Channel>& channels = session_.open().analysis.record->channels;
  if (reference_ && *reference_ < channels.size()) return reference_;
  std::optional<std::size_t> first;
  for (std::size_t i = 0; i < channels.size(); ++i) {
    if (!channels[i].evaluated()) continue;
    if (channels[i].role == ThermocoupleRole::control) return i;
    if (!first) first = i;
  }
  return first;
}

void MainWindow::showDifferencesFrom(std::size_t channel) {
  reference_ = channel;
  if (actions_->show_difference->isChecked())
    workOutCurves();
  else
    actions_->show_difference->setChecked(true);
}

/// What can be shown alone: the chosen channels, the others, each group.
void MainWindow::addGroups(QMenu& menu) {
  const Report* report = session_.report();
  if (!report) return;
  const std::vector<std::size_t> chosen = channels_->chosen();
  std::vector<bool> picked(report->chart.record->channels.size());
  for (const std::size_t trace : chosen) picked[report->chart.traces[trace].channel] = true;
  const auto add = [&](const QString& text, const std::vector<bool>& shown) {
    QAction* action = menu.addAction(text);
    connect(action, &QAction::triggered, this, [this, shown] { session_.setVisibleChannels(shown); });
    return action;
  };
  const auto others = [](std::vector<bool> channels) {
    channels.flip();
    return channels;
  };
  add(tr("Show &only the chosen"), picked)->setEnabled(!chosen.empty());
  add(tr("Show all &but the chosen"), others(picked))->setEnabled(!chosen.empty());
  add(tr("Show those that are &hidden instead"), others(visibleChannels()));
  const std::vector<ChannelGroup> groups = channel_groups(*report);
  if (groups.empty()) return;
  menu.addSeparator();
  for (const ChannelGroup& group : groups) add(tr("Only %1").arg(menu_text(group.name)), group.channels);
}

void MainWindow::offerForTrace(std::size_t trace, const QPoint& at) {
  const Report* report = session_.report();
  if (!report || trace >= report->chart.traces.size()) return;
  const std::size_t channel = report->chart.traces[trace].channel;
  const QString name = menu_text(pdf::shown_text(report->chart.traces[trace].name));
  QMenu menu(this);
  QAction* exclude = menu.addAction(tr("&Exclude %1…").arg(name));
  exclude->setVisible(!session_.open().read_only());
  connect(exclude, &QAction::triggered, this, [this, channel] { askToExclude(channel, std::nullopt); });
  QAction* differences = menu.addAction(tr("Show &differences from %1").arg(name));
  connect(differences, &QAction::triggered, this, [this, channel] { showDifferencesFrom(channel); });
  menu.addSeparator();
  connect(menu.addAction(tr("Show &all")), &QAction::triggered, this,
          [this] { session_.setAllVisible(true); });
  addGroups(menu);
  menu.addSeparator();
  connect(menu.addAction(tr("Copy &table")), &QAction::triggered, this,
          [this] { copy_table(*channels_->list()->model()); });
  menu.exec(at);
}

}  // namespace soakwright::gui
