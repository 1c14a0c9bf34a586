// SPDX-License-Identifier: GPL-3.0-or-later
// What is wired to what: actions and panes to the session, and the session back to the panes.

#include <QAction>
#include <QApplication>
#include <QDragEnterEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QMimeData>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabWidget>
#include <QTreeView>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/panes/start_page.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/find_bar.h"
#include "app/gui/parts/summary_bar.h"
#include "app/gui/window_actions.h"

namespace soakwright::gui {

void MainWindow::wireActions() {
  const WindowActions& a = *actions_;
  const auto on = [this](QAction* action, auto&& what) { connect(action, &QAction::triggered, this, what); };
  on(a.open_log, [this] { askToOpen(FileKind::log); });
  on(a.open_procedure, [this] { askToOpen(FileKind::procedure); });
  on(a.open_job, [this] { askToOpen(FileKind::job); });
  on(a.reload, [this] { reloadFiles(); });
  on(a.close_job, [this] {
    if (mayLeave()) session_.closeJob();
  });
  on(a.close_all, [this] {
    if (mayLeave()) session_.closeAll();
  });
  on(a.save, [this] { saveWhatIsUnsaved(true); });
  on(a.exclude, [this] { exclude(); });
  on(a.export_report, [this] {
    askToExport(tr("Export report"), tr("PDF (*.pdf)"), QStringLiteral(".pdf"), &MainWindow::exportReport);
  });
  on(a.export_result, [this] {
    askToExport(tr("Export result"), tr("JSON (*.json)"), QStringLiteral(".json"), &MainWindow::exportResult);
  });
  on(a.export_picture, [this] {
    askToExport(tr("Export picture"), tr("PNG (*.png)"), QStringLiteral(".png"), &MainWindow::exportPicture);
  });
  on(a.print, [this] { printReport(); });
  on(a.print_preview, [this] { previewPrint(); });
  on(a.quit, [this] { close(); });
  on(a.zoom_in, [this] { chart_->zoomTime(1.25); });
  on(a.zoom_out, [this] { chart_->zoomTime(0.8); });
  on(a.reset_view, [this] { chart_->resetView(); });
  on(a.fit_temperature, [this] { chart_->fitTemperature(); });
  on(a.show_chart, [this] {
    pages_->setCurrentIndex(0);
    chart_->setFocus();
  });
  on(a.show_reading, [this] { pages_->setCurrentWidget(reading_); });
  on(a.show_job, [this] { pages_->setCurrentWidget(job_); });
  on(a.show_procedure, [this] {
    pages_->setCurrentWidget(procedure_);
    showMiddle();
  });
  connect(a.show_channels, &QAction::toggled, channels_, &QWidget::setVisible);
  connect(a.show_lists, &QAction::toggled, beside_lists_, &QWidget::setVisible);
  on(a.next_pane, [this] { nextPane(); });
  on(a.next_requirement, [this] { stepRequirement(1); });
  on(a.previous_requirement, [this] { stepRequirement(-1); });
}

void MainWindow::wireSession() {
  connect(&session_, &Session::caseChanged, this, &MainWindow::showCase);
  connect(&session_, &Session::selectionChanged, this, &MainWindow::showSelection);
  connect(&session_, &Session::visibilityChanged, this, &MainWindow::showVisibility);
  connect(&session_, &Session::busyChanged, this, [this](bool busy) {
    if (busy)
      busy_timer_.start();
    else
      showBusy(false);
  });
  connect(&busy_timer_, &QTimer::timeout, this, [this] { showBusy(session_.busy()); });
  connect(&session_, &Session::progressed, this,
          [this](double share) { progress_->setValue(static_cast<int>(100.0 * share)); });
  connect(&session_, &Session::refused, this, [this](const QStringList& texts) {
    refusal_->say(session_.open().files.none() ? tr("The file cannot be opened")
                                               : tr("The file cannot be opened; the open record is kept"),
                  texts);
  });
  connect(&session_, &Session::changesChanged, this, &MainWindow::keepChanges);
  connect(&session_, &Session::logRefused, this, &MainWindow::showRefusedLog);
  connect(cancel_, &QPushButton::clicked, &session_, &Session::cancel);
  connect(&exports_, &ExportWork::finished, this, &MainWindow::showWritten);
  connect(&exports_, &ExportWork::busyChanged, this, [this](bool busy) {
    for (QAction* action : {actions_->export_report, actions_->export_result, actions_->export_picture})
      action->setEnabled(!busy && session_.open().has_record());
    if (session_.open().read_only()) actions_->export_report->setEnabled(false);
    if (busy) status_->setText(tr("Writing …"));
  });
}

void MainWindow::wirePanes() {
  const auto lead = [this](ListPane* list, Selection::Kind kind) {
    connect(list, &ListPane::chosen, this, [this, kind](std::size_t index) {
      if (session_.selection() == Selection{kind, index})
        showSelection();
      else
        session_.select({kind, index});
    });
  };
  lead(requirements_, Selection::Kind::requirement);
  lead(findings_, Selection::Kind::finding);
  lead(deviations_, Selection::Kind::finding);
  lead(phases_, Selection::Kind::phase);
  lead(suspects_, Selection::Kind::suspect);
  lead(notices_, Selection::Kind::notice);
  connect(finding_pane_, &FindingPane::filtered, this, [this] {
    const Selection& chosen = session_.selection();
    if (chosen.kind == Selection::Kind::finding) findings_->mark(chosen.index);
  });
  connect(chart_, &ChartPane::findingClicked, this, [this](std::size_t finding) {
    session_.select({Selection::Kind::finding, finding});
  });
  connect(chart_, &ChartPane::phaseClicked, this, [this](std::size_t phase) {
    session_.select({Selection::Kind::phase, phase});
  });
  connect(chart_, &ChartPane::stageClicked, this, [this](std::size_t stage) {
    const ChartSegment& clicked = session_.report()->chart.stages[stage];
    chart_->showPlace(std::pair{clicked.from_s, clicked.to_s}, std::nullopt, std::nullopt);
  });
  connect(chart_, &ChartPane::pointerMoved, this, &MainWindow::showPointer);
  connect(chart_, &ChartPane::coloursChanged, this, &MainWindow::showColours);
  connect(reading_, &ImportSettingsPane::changed, &session_,
          [this](const std::vector<JobChange>& changes) { session_.change(changes); });
  connect(job_, &JobPane::changed, &session_,
          [this](const std::vector<JobChange>& changes) { session_.change(changes); });
  connect(reading_, &ImportSettingsPane::undoWanted, &session_.edits(), &QUndoStack::undo);
  connect(reading_, &ImportSettingsPane::dropWanted, &session_, &Session::dropRefused);
  connect(reading_, &ImportSettingsPane::writeWanted, this, [this] { saveJob(true); });
  connect(verdict_, &SummaryBar::cautionsWanted, actions_->cautions, &QAction::trigger);
  connect(start_, &StartPage::logWanted, actions_->open_log, &QAction::trigger);
  connect(start_, &StartPage::jobWanted, actions_->open_job, &QAction::trigger);
  connect(start_, &StartPage::procedureWanted, actions_->new_procedure, &QAction::trigger);
  connect(start_, &StartPage::filesWanted, this, &MainWindow::openFromList);
  for (QSplitter* splitter : {beside_chart_, above_lists_, beside_lists_})
    connect(splitter, &QSplitter::splitterMoved, this, [this, splitter] {
      if (splitter == above_lists_) lists_sized_ = true;
      layout_timer_.start();
    });
}

void MainWindow::stepRequirement(int step) {
  const ReportListModel& lines = requirements_->lines();
  if (lines.rowCount() == 0) return;
  const Selection& chosen = session_.selection();
  int line = step > 0 ? 0 : lines.rowCount() - 1;
  if (chosen.kind == Selection::Kind::requirement)
    line = std::clamp(lines.lineOf(chosen.index).value_or(0) + step, 0, lines.rowCount() - 1);
  session_.select(
      {Selection::Kind::requirement, lines.content().lines[static_cast<std::size_t>(line)].index});
}

ListPane* MainWindow::shownList() const {
  for (ListPane* list : {requirements_, findings_, deviations_, phases_, suspects_, notices_, between_})
    if (lists_->currentWidget() == pageOf(list)) return list;
  return requirements_;
}

void MainWindow::wireFinding() {
  connect(actions_->find, &QAction::triggered, this, [this] {
    actions_->show_lists->setChecked(true);
    find_bar_->start();
  });
  connect(find_bar_, &FindBar::wanted, this, [this](const QString& text, int step) {
    find_bar_->sayFound(text.isEmpty() || shownList()->find(text, step));
  });
  connect(find_bar_, &FindBar::closed, this, [this] {
    find_bar_->hide();
    shownList()->setFocus();
  });
}

void MainWindow::nextPane() {
  const std::vector<QWidget*> panes = {
      pages_->currentWidget() == reading_ ? static_cast<QWidget*>(pages_) : chart_, lists_->currentWidget(),
      card_, channels_->list()};
  std::size_t now = panes.size() - 1;
  for (std::size_t i = 0; i < panes.size(); ++i)
    if (panes[i]->hasFocus() || panes[i]->isAncestorOf(QApplication::focusWidget())) now = i;
  for (std::size_t step = 1; step <= panes.size(); ++step) {
    QWidget* next = panes[(now + step) % panes.size()];
    if (!next->isVisible()) continue;
    next->setFocus(Qt::ShortcutFocusReason);
    return;
  }
}

void MainWindow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    if (session_.busy()) return session_.cancel();
    if (refusal_->isVisible()) return refusal_->putAway();
    return session_.select({});
  }
  QMainWindow::keyPressEvent(event);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  QStringList paths;
  for (const QUrl& url : event->mimeData()->urls())
    if (url.isLocalFile()) paths.append(url.toLocalFile());
  if (paths.isEmpty()) return;
  event->acceptProposedAction();
  openPaths(paths);
}

}  // namespace soakwright::gui
