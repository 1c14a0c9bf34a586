// SPDX-License-Identifier: GPL-3.0-or-later
// The open record beside something else: another record over it, the required cycle on the chart, the same
// record under other evaluation settings.

#include <QAction>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/previous_records_dialog.h"
#include "app/gui/panes/settings_comparison.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/texts/problem_text.h"
#include "app/gui/window_actions.h"
#include "app/pdf/shown_text.h"
#include "core/report/record_overlay.h"

namespace soakwright::gui {
namespace {

const QString kRequired = QStringLiteral("required-cycle");

QString aligned_words(RecordOffset::Aligned by) {
  switch (by) {
    case RecordOffset::Aligned::required_hold:
      return MainWindow::tr("aligned on the start of the hold");
    case RecordOffset::Aligned::recorded_hold:
      return MainWindow::tr("aligned on the start of the longest recorded hold");
    case RecordOffset::Aligned::record_start:
      break;
  }
  return MainWindow::tr("aligned on the start of the record: no hold was found in both");
}

}  // namespace

void MainWindow::wireComparing() {
  const WindowActions& a = *actions_;
  connect(a.compare, &QAction::triggered, this, &MainWindow::askToCompare);
  connect(a.stop_comparing, &QAction::triggered, &other_record_, &OtherRecord::close);
  connect(a.compare_settings, &QAction::triggered, this, &MainWindow::compareSettings);
  connect(a.previous_records, &QAction::triggered, this, &MainWindow::lookAtPreviousRecords);
  connect(continued_, &MessageStrip::pressed, this, &MainWindow::lookAtPreviousRecords);
  connect(a.show_required, &QAction::toggled, this, [this](bool shown) {
    chart_->showRequired(shown);
    memory_.keepLayout(kRequired, shown ? "1" : "0");
  });
  a.show_required->setChecked(memory_.layout(kRequired) != "0");
  a.stop_comparing->setEnabled(false);
  connect(&other_record_, &OtherRecord::changed, this, [this] {
    status_->clear();
    showOtherRecord();
    chart_->resetView();
  });
  connect(&other_record_, &OtherRecord::refused, this, [this](const Problems& problems) {
    status_->clear();
    refusal_->say(tr("The record cannot be compared with"), problem_texts(problems));
  });
}

void MainWindow::askToCompare() {
  const QString folder = QFileInfo(session_.open().place()).absolutePath();
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Compare with another record"), folder,
                                   tr("Logs and jobs (*.csv *.txt *.tsv *.log *.dat *.toml);;All files (*)"));
  if (!path.isEmpty()) compareWith(path);
}

void MainWindow::compareWith(const QString& path) {
  if (!session_.open().has_record()) return;
  status_->setText(tr("Reading and evaluating …"));
  other_record_.open(path, session_.open());
}

void MainWindow::showOtherRecord() {
  const OpenCase& open = session_.open();
  if (!open.has_record() && other_record_.get()) return other_record_.close();
  const auto other = other_record_.get();
  actions_->stop_comparing->setEnabled(other != nullptr);
  if (!other || !other->has_record()) return chart_->setOverlay(std::nullopt);
  const RecordOffset offset = offset_onto(open.analysis, other->analysis);
  chart_->setOverlay(
      ChartOverlay{other->report, other->traces, offset.seconds,
                   tr("Grey: %1, %2").arg(QFileInfo(other->log_path).fileName(), aligned_words(offset.by))});
}

void MainWindow::compareSettings() {
  if (!settings_comparison_) settings_comparison_ = new SettingsComparison(this);
  settings_comparison_->show(session_.open());
}

void MainWindow::lookAtPreviousRecords() {
  const auto& report = session_.open().report;
  if (!report || report->previous_records.empty()) return;
  if (!previous_records_) previous_records_ = new PreviousRecordsDialog(this);
  previous_records_->setCase(session_.open());
  previous_records_->show();
  previous_records_->raise();
}

/// Nobody shall take the open record for all of a job that took several.
void MainWindow::followPreviousRecords() {
  const auto& report = session_.open().report;
  const bool any = report && !report->previous_records.empty();
  actions_->previous_records->setEnabled(any);
  QStringList names;
  if (any)
    for (const auto& record : report->previous_records) names.append(pdf::shown_text(record->subject));
  continued_->say(any ? tr("The chart shows the last record. Previous: %1").arg(names.join(tr(", ")))
                      : QString());
  if (!previous_records_ || !previous_records_->isVisible()) return;
  if (any)
    previous_records_->setCase(session_.open());
  else
    previous_records_->close();
}

/// What is compared belongs to what is open.
void MainWindow::followSettings() {
  if (!settings_comparison_ || !settings_comparison_->isVisible()) return;
  if (session_.open().analysis.verdicts)
    settings_comparison_->show(session_.open());
  else
    settings_comparison_->close();
}

}  // namespace soakwright::gui
