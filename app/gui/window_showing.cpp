// SPDX-License-Identifier: GPL-3.0-or-later
// What each part of the window shows of what is open, chosen, hidden and under the pointer.

#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTabWidget>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/list_contents.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/pointer_reading.h"
#include "app/gui/parts/summary_bar.h"
#include "app/gui/window_actions.h"

namespace soakwright::gui {

void MainWindow::showCase(bool record) {
  const OpenCase& open = session_.open();
  const Report* report = session_.report();
  refusal_->putAway();
  showMiddle();
  watch_.watch(open.stamps);
  requirements_->setContent(requirement_lines(report));
  finding_pane_->show(open.report);
  deviations_->setContent(deviation_lines(report));
  phases_->setContent(phase_lines(report));
  suspects_->setContent(suspect_lines(report));
  notices_->setContent(notice_lines(report));
  const auto count = [this](ListPane* list, std::size_t lines) {
    const int page = lists_->indexOf(pageOf(list));
    lists_->setTabText(page, lines > 0 ? QStringLiteral("%1 (%2)").arg(list->accessibleName()).arg(lines)
                                       : list->accessibleName());
  };
  count(findings_, report ? report->findings.size() : 0);
  for (ListPane* list : {requirements_, phases_, suspects_, notices_})
    count(list, static_cast<std::size_t>(list->lines().rowCount()));
  if (record) reference_.reset();
  channels_->setReport(open.report);
  chart_->show(open.report, open.analysis.verdicts, open.traces, !record);
  chart_->setRequired(open.analysis.verdicts
                          ? std::make_shared<const RequiredCycle>(required_cycle(open.analysis))
                          : nullptr);
  other_record_.follow(open);
  showOtherRecord();
  if (!open.has_record() || !curves_ || record || curves_->record != open.analysis.record ||
      curves_of_ != open.analysis.verdicts.get()) {
    curves_.reset();
    curve_work_.forget();
    chart_->setCurves(nullptr);
  }
  curves_of_ = open.analysis.verdicts.get();
  workOutCurves();
  showBetween();
  card_->show(open.report, {});
  showVisibility();
  showColours();
  reading_->show(session_);
  job_->show(session_);
  procedure_->show(session_);
  if (report && (record || (report->verdict && !had_verdict_)))
    lists_->setCurrentWidget(report->verdict ? requirements_ : phases_);
  had_verdict_ = report && report->verdict;

  memory_.remember(open.files);
  offerRecent();
  actions_->enableFor({open.has_record(), open.analysis.verdicts != nullptr, !open.files.job.isEmpty(),
                       !open.files.none(), open.read_only()});
  // One file is written at a time.
  if (exports_.busy())
    for (QAction* action : {actions_->export_report, actions_->export_result, actions_->export_picture})
      action->setEnabled(false);
  showReview();
  showUnsaved();
  offerLeftChanges();
  followSettings();
  followReport();
  followPreviousRecords();
  showMovableLimits();
}

QWidget* MainWindow::pageOf(ListPane* list) const {
  return list == findings_ ? static_cast<QWidget*>(finding_pane_) : list;
}

void MainWindow::showSelection() {
  const Report* report = session_.report();
  const Selection& chosen = session_.selection();
  const auto mark = [&](ListPane* list, Selection::Kind kind) {
    list->mark(chosen.kind == kind ? std::optional(chosen.index) : std::nullopt);
    // Both lists of findings stay where they are.
    const bool there = kind == Selection::Kind::finding && lists_->currentWidget() == deviations_;
    if (chosen.kind == kind && !there) lists_->setCurrentWidget(pageOf(list));
  };
  mark(requirements_, Selection::Kind::requirement);
  mark(findings_, Selection::Kind::finding);
  deviations_->mark(chosen.kind == Selection::Kind::finding ? std::optional(chosen.index) : std::nullopt);
  mark(phases_, Selection::Kind::phase);
  mark(suspects_, Selection::Kind::suspect);
  mark(notices_, Selection::Kind::notice);
  card_->show(session_.open().report, chosen);
  showReview();
  channels_->markTraces({});
  if (!report || chosen.kind == Selection::Kind::none) return chart_->showEvidence(nullptr);

  const auto trace_of = [report](std::size_t channel) -> std::optional<std::size_t> {
    for (std::size_t i = 0; i < report->chart.traces.size(); ++i)
      if (report->chart.traces[i].channel == channel) return i;
    return std::nullopt;
  };
  switch (chosen.kind) {
    case Selection::Kind::requirement:
      return chart_->showEvidence(&report->requirements[chosen.index].evidence);
    case Selection::Kind::finding:
      for (std::size_t i = 0; i < report->chart.marks.size(); ++i) {
        const ChartMark& place = report->chart.marks[i];
        if (place.finding == chosen.index)
          return chart_->showPlace(std::pair{place.from_s, place.to_s}, place.trace, i);
      }
      return chart_->showPlace(std::nullopt, std::nullopt, std::nullopt);
    case Selection::Kind::phase: {
      const Phase& phase = session_.open().analysis.course->phases[report->phases[chosen.index].phase];
      return chart_->showPlace(std::pair{phase.start_s, phase.end_s}, std::nullopt, std::nullopt);
    }
    case Selection::Kind::suspect: {
      const Suspect& suspect =
          session_.open().analysis.course->suspects[report->suspects[chosen.index].suspect];
      return chart_->showPlace(std::pair{suspect.from_s, suspect.to_s}, trace_of(suspect.channel),
                               std::nullopt);
    }
    case Selection::Kind::notice:
    case Selection::Kind::none:
      return;
  }
}

std::vector<bool> MainWindow::visibleChannels() const {
  const OpenCase& open = session_.open();
  std::vector<bool> visible(open.has_record() ? open.analysis.record->channels.size() : 0);
  for (std::size_t i = 0; i < visible.size(); ++i) visible[i] = session_.visible(i);
  return visible;
}

void MainWindow::showVisibility() {
  channels_->setVisibleChannels(visibleChannels());
  chart_->setVisibleChannels(visibleChannels());
  showPointer(chart_->pointer());
}

void MainWindow::showColours() {
  const ChartColours colours = ChartColours::of(palette());
  std::vector<QPen> pens;
  if (const Report* report = session_.report())
    for (std::size_t i = 0; i < report->chart.traces.size(); ++i) pens.push_back(chart_->penOf(i));
  channels_->setPens(std::move(pens));
  verdict_->setColours(colours);
  card_->setColours(colours);
  reading_->setColours(colours);
  for (ListPane* list : {requirements_, findings_, deviations_, phases_, suspects_, notices_})
    list->setColours(colours);
}

void MainWindow::showPointer(std::optional<double> at_s) {
  const Report* report = session_.report();
  const ChartCurves* curves = curves_ ? &curves_->curves : nullptr;
  channels_->setReading(report && at_s
                            ? std::optional(reading_at(report->chart, curves, visibleChannels(), *at_s))
                            : std::nullopt);
}

void MainWindow::showBusy(bool busy) {
  if (!busy) busy_timer_.stop();
  if (busy) progress_->setValue(0);
  progress_->setVisible(busy);
  cancel_->setVisible(busy);
  status_->setText(busy ? tr("Reading and evaluating …") : QString());
}

}  // namespace soakwright::gui
