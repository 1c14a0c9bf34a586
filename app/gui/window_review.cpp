// SPDX-License-Identifier: GPL-3.0-or-later
// The review: what is decided on each finding, who signs, and the file that it is kept in.

#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QStatusBar>
#include <algorithm>

#include "app/gui/background/exports.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/forms/review_form.h"
#include "app/gui/parts/people_dialog.h"
#include "app/gui/parts/save_preview.h"
#include "app/gui/texts/line_changes.h"
#include "app/gui/window_actions.h"
#include "app/gui/window_messages.h"
#include "app/pdf/shown_text.h"
#include "core/procedure/review/review_text.h"
#include "core/report/open_findings.h"

namespace soakwright::gui {
namespace {

const QString kFindingOrder = QStringLiteral("finding-order");
const char* const kInTime = "time";

const FindingReview* decision_on(const Review* review, const Finding& finding) {
  if (!review) return nullptr;
  for (const FindingReview& one : review->findings)
    if (is_disposition_of(one, finding)) return &one;
  return nullptr;
}

/// Takes out what the review says of one finding. An entry that speaks of others too goes on doing so, by an
/// entry for each.
void take_out(Review& review, const std::vector<Finding>& findings, const Finding& finding) {
  std::vector<FindingReview> kept;
  for (const FindingReview& entry : review.findings) {
    if (!is_disposition_of(entry, finding)) {
      kept.push_back(entry);
      continue;
    }
    for (const Finding& other : findings) {
      if (&other == &finding || !is_disposition_of(entry, other)) continue;
      FindingReview own = review_naming(other);
      own.disposition = entry.disposition;
      own.reason = entry.reason;
      kept.push_back(std::move(own));
    }
  }
  review.findings = std::move(kept);
}

}  // namespace

void MainWindow::wireReview() {
  QComboBox* order = finding_pane_->order();
  order->setCurrentIndex(memory_.layout(kFindingOrder) == kInTime ? 1 : 0);
  connect(order, &QComboBox::currentIndexChanged, this,
          [this](int index) { memory_.keepLayout(kFindingOrder, index == 1 ? kInTime : "worst-first"); });
  const WindowActions& a = *actions_;
  connect(a.next_open_finding, &QAction::triggered, this, [this] { stepOpenFinding(); });
  connect(a.people, &QAction::triggered, this, [this] { askForPeople(); });
  connect(a.open_review, &QAction::triggered, this, [this] { askToOpen(FileKind::review); });
  connect(a.save_review, &QAction::triggered, this, [this] { saveReview(true); });
  connect(review_form_, &ReviewForm::decided, this, &MainWindow::decide);
}

void MainWindow::showReview() {
  const OpenCase& open = session_.open();
  const Selection& chosen = session_.selection();
  const bool possible = open.analysis.verdicts && session_.wanted().empty() && !open.read_only();
  for (QAction* action : {actions_->people, actions_->open_review}) action->setEnabled(possible);
  actions_->next_open_finding->setEnabled(open.analysis.verdicts != nullptr);
  actions_->save_review->setEnabled(session_.reviewUnsaved());
  if (!open.analysis.verdicts || chosen.kind != Selection::Kind::finding) {
    review_form_->hide();
    return;
  }
  const std::vector<Finding>& findings = open.analysis.verdicts->findings;
  const auto needed =
      static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), needs_disposition));
  const std::size_t left = open_findings(open.analysis).size();
  const QString count = needed == 0 ? tr("No finding needs a decision.")
                                    : tr("%1 of %2 findings decided").arg(needed - left).arg(needed);
  QString why_not;
  if (!session_.wanted().empty())
    why_not = tr("Save or undo the changed settings first: a review belongs to a result of saved files.");
  if (open.read_only()) why_not = tr("Read from a report: what was decided cannot be changed.");
  const Finding& finding = findings[open.report->findings[chosen.index].finding];
  const FindingReview* now = decision_on(open.analysis.review.get(), finding);
  review_form_->show(now ? std::optional(*now) : std::nullopt, count, why_not);
}

void MainWindow::decide(std::optional<FindingReview::Disposition> disposition, const QString& reason) {
  const OpenCase& open = session_.open();
  const Selection& chosen = session_.selection();
  if (!open.analysis.verdicts || chosen.kind != Selection::Kind::finding) return;
  const FindingRow& row = open.report->findings[chosen.index];
  const std::vector<Finding>& findings = open.analysis.verdicts->findings;
  const Finding& finding = findings[row.finding];
  Review next = session_.reviewNow();
  take_out(next, findings, finding);
  if (disposition) {
    FindingReview entry = review_naming(finding);
    entry.disposition = *disposition;
    entry.reason = reason.toStdString();
    next.findings.push_back(std::move(entry));
  }
  session_.review(next, tr("decision on finding %1").arg(pdf::shown_text(row.tag)));
}

void MainWindow::stepOpenFinding() {
  const std::vector<std::size_t> open = open_findings(session_.open().analysis);
  if (open.empty()) {
    statusBar()->showMessage(tr("Every finding is decided"), kDone_ms);
    return;
  }
  const Selection& chosen = session_.selection();
  const Report& report = *session_.report();
  std::size_t next = open.front();
  if (chosen.kind == Selection::Kind::finding) {
    const std::size_t now = report.findings[chosen.index].finding;
    const auto after = std::upper_bound(open.begin(), open.end(), now);
    if (after != open.end()) next = *after;
  }
  for (std::size_t i = 0; i < report.findings.size(); ++i)
    if (report.findings[i].finding == next) session_.select({Selection::Kind::finding, i});
}

void MainWindow::askForPeople() {
  Review next = session_.reviewNow();
  PeopleDialog dialog(next.people, this);
  if (dialog.exec() != QDialog::Accepted) return;
  next.people = dialog.people();
  session_.review(next, tr("names of the signature lines"));
}

bool MainWindow::saveReview(bool preview) {
  if (!session_.reviewUnsaved()) return true;
  QString path = session_.open().files.review;
  const bool named = !path.isEmpty();
  if (!named) {
    const QFileInfo log(session_.open().log_path);
    QFileDialog dialog(this, tr("Save the review"), log.absolutePath(), tr("TOML (*.toml)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QStringLiteral("toml"));
    dialog.selectFile(log.completeBaseName() + QStringLiteral("-review.toml"));
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return false;
    path = dialog.selectedFiles().first();
  }
  const std::string text = review_text(session_.reviewNow());
  if (preview && named) {
    QFile file(path);
    const QString before = file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
    const QStringList lines = line_changes(before, QString::fromStdString(text));
    if (!ask_to_save(this, path, !QFileInfo::exists(path), {tr("review")}, lines)) return false;
  }
  return writeReview(path);
}

bool MainWindow::writeReview(const QString& path) {
  const std::string text = review_text(session_.reviewNow());
  Problems problems = write_text(path, text);
  if (problems.empty()) problems = session_.reviewWritten(path, text);
  showWritten(path, problems);
  return problems.empty();
}

}  // namespace soakwright::gui
