// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/session.h"

#include <algorithm>
#include <utility>

#include "app/gui/report_case.h"
#include "app/gui/texts/problem_text.h"
#include "app/pdf/shown_text.h"
#include "core/report/review_check.h"

namespace soakwright::gui {
namespace {

void name_file(OpenFiles& files, FileKind kind, const QString& path) {
  switch (kind) {
    case FileKind::log:
      files.log = path;
      break;
    case FileKind::procedure:
      files.procedure = path;
      break;
    case FileKind::job:
      files.job = path;
      break;
    case FileKind::review:
      files.review = path;
      break;
    case FileKind::report:
      files.report = path;
      break;
  }
}

bool names_one(const OpenFiles& files, FileKind kind) {
  switch (kind) {
    case FileKind::log:
      return !files.log.isEmpty();
    case FileKind::procedure:
      return !files.procedure.isEmpty();
    case FileKind::job:
      return !files.job.isEmpty();
    case FileKind::review:
      return !files.review.isEmpty();
    case FileKind::report:
      return !files.report.isEmpty();
  }
  return false;
}

OpenFiles together(OpenFiles first, const OpenFiles& then) {
  for (QString OpenFiles::*file :
       {&OpenFiles::log, &OpenFiles::procedure, &OpenFiles::job, &OpenFiles::review})
    if (!(then.*file).isEmpty()) first.*file = then.*file;
  if (then.changes) first.changes = then.changes;
  if (then.draft) first.draft = then.draft;
  return first;
}

/// The same log with the same columns: what is hidden stays hidden, and the chart stays where it is.
bool same_channels(const OpenCase& a, const OpenCase& b) {
  if (!a.has_record() || !b.has_record() || a.log_path != b.log_path) return false;
  const auto& x = a.analysis.record->channels;
  const auto& y = b.analysis.record->channels;
  return std::equal(x.begin(), x.end(), y.begin(), y.end(),
                    [](const Channel& one, const Channel& other) { return one.column == other.column; });
}

/// A chosen requirement stays chosen where the new report has it too; places of other lists may mean
/// something else.
Selection still_chosen(const Selection& chosen, const Report* before, const Report* after) {
  if (!before || !after) return {};
  if (chosen.kind == Selection::Kind::finding) {
    const FindingRow& row = before->findings[chosen.index];
    for (std::size_t i = 0; i < after->findings.size(); ++i) {
      const FindingRow& other = after->findings[i];
      if (other.id == row.id && other.weld == row.weld && other.where == row.where && other.when == row.when)
        return {Selection::Kind::finding, i};
    }
    return {};
  }
  if (chosen.kind != Selection::Kind::requirement) return {};
  const RequirementRow& row = before->requirements[chosen.index];
  for (std::size_t i = 0; i < after->requirements.size(); ++i)
    if (after->requirements[i].id == row.id && after->requirements[i].weld == row.weld)
      return {Selection::Kind::requirement, i};
  return {};
}

}  // namespace

Session::Session(QObject* parent) : QObject(parent) {
  connect(&work_, &BackgroundWork::busyChanged, this, &Session::busyChanged);
  connect(&work_, &BackgroundWork::progressed, this, &Session::progressed);
  connect(&work_, &BackgroundWork::finished, this, &Session::take);
}

void Session::openFiles(const QStringList& paths) {
  OpenFiles named;
  QStringList twice;
  for (const QString& path : paths) {
    const FileKind kind = file_kind(path);
    if (names_one(named, kind)) twice.append(path);
    name_file(named, kind, path);
  }
  if (!twice.isEmpty()) {
    emit refused({tr("Several files of one kind were given: %1; open one at a time")
                      .arg(pdf::shown_text(twice.join(QStringLiteral(", ")).toStdString()))});
    return;
  }
  if (!named.report.isEmpty() && paths.size() > 1) {
    emit refused({tr("%1 is a report, with its files inside; open it without other files")
                      .arg(pdf::shown_text(named.report.toStdString()))});
    return;
  }
  openNamed(named);
}

void Session::openAs(FileKind kind, const QString& path) {
  OpenFiles named;
  name_file(named, kind, path);
  openNamed(named);
}

void Session::openNamed(OpenFiles named) {
  if (named.none()) return;
  // What is still being read is opened together with what comes now, not dropped for it. A report goes with
  // nothing.
  const bool report = !named.report.isEmpty() || !pending_.report.isEmpty();
  // The same record read again after an edit or a save is none of that.
  if (busy() && purpose_ == Purpose::open && !report) named = together(pending_, named);
  const bool only_procedure =
      named.report.isEmpty() && named.log.isEmpty() && named.job.isEmpty() && named.review.isEmpty();
  if (only_procedure && open_.has_record() && !open_.read_only()) {
    // Edits of another procedure are none of this one.
    if (wanted_.empty() && !review_) clearEdits();
    for (Edits& state : states_) state.procedure.reset();
    draft_.reset();
    evaluateAgain(named.procedure);
  } else
    read(open_.read_only() ? open_.files.nothing_in_these_units() : open_.files, named);
}

void Session::read(const OpenFiles& kept, const OpenFiles& named, Purpose purpose) {
  pending_ = named;
  purpose_ = purpose;
  const bool changing = purpose == Purpose::change;
  work_.start([kept, named, changing](const Watch& watch) {
    const bool report = !named.report.isEmpty();
    WorkOutcome outcome{report ? read_report(named.report, kept, watch) : read_case(kept, named, watch)};
    // What is being changed is known already, and the log inside a report cannot be changed.
    if (!outcome.open && !changing && !report)
      outcome.refused = refused_log(outcome.open.problems(), kept, named, watch);
    return outcome;
  });
}

void Session::evaluateAgain(const QString& procedure) {
  pending_ = {};
  purpose_ = Purpose::again;
  pending_.procedure = procedure;
  work_.start(
      [open = open_, procedure](const Watch&) { return WorkOutcome{evaluate_case_again(open, procedure)}; });
}

/// Only the procedure differs from what is open: neither the log nor its phases are touched.
void Session::evaluateAsWanted() {
  pending_ = {};
  purpose_ = Purpose::change;
  work_.start([open = open_, draft = draft_](const Watch&) {
    return WorkOutcome{evaluate_case_again(open, filed_procedure(open), draft)};
  });
  emit changesChanged();
}

void Session::reload() {
  if (open_.files.none()) return;
  if (open_.read_only()) {
    OpenFiles again;
    again.report = open_.files.report;
    return read(open_.files.nothing_in_these_units(), again, Purpose::again);
  }
  if (must_read_again(open_) || open_.procedure_path.isEmpty() || draft_)
    read(open_.files, {}, Purpose::again);
  else
    evaluateAgain(open_.procedure_path);
}

void Session::readAsWanted() {
  OpenFiles named = refused_ ? refused_->named : OpenFiles{};
  OpenFiles kept = refused_ ? refused_->kept : open_.files;
  named.changes = wanted_;
  kept.draft = draft_;
  read(kept, named, Purpose::change);
  emit changesChanged();
}

void Session::dropRefused() {
  if (!refused_) return;
  refused_.reset();
  keepProblems({});
  clearEdits();
  wanted_ = open_.files.changes.value_or(std::vector<JobChange>{});
  draft_ = open_.files.draft;
  emit changesChanged();
}

QString Session::logSha() const {
  if (refused_) return refused_->sha256;
  return open_.has_record() ? QString::fromStdString(open_.analysis.record->sha256) : QString();
}

void Session::closeJob() {
  if (open_.files.job.isEmpty() || open_.read_only()) return;
  // What the job named stays open, now by its own name.
  OpenFiles files = open_.files;
  files.log = open_.log_path;
  files.procedure = open_.procedure_path;
  files.job.clear();
  files.changes.reset();
  read(files, {});
}

void Session::closeAll() {
  work_.cancel();
  refused_.reset();
  clearEdits();
  review_.reset();
  file_review_.reset();
  OpenCase nothing;
  nothing.files = open_.files.nothing_in_these_units();
  adopt(std::move(nothing));
  emit changesChanged();
}

void Session::cancel() { work_.cancel(); }

void Session::take(const BackgroundWork::Outcome& outcome) {
  const Purpose purpose = std::exchange(purpose_, Purpose::open);
  const bool changing = purpose == Purpose::change;
  if (outcome->open.ok()) {
    refused_.reset();
    if (purpose == Purpose::open) clearEdits();
    file_review_ = outcome->open.value().analysis.review;
    const auto review = std::exchange(pending_review_, std::nullopt);
    const auto unsaved = std::exchange(review_, std::nullopt);
    adopt(outcome->open.value());
    // Decisions stay where the result is the same.
    if (review || (unsaved && purpose == Purpose::again)) applyReview(review ? review : unsaved);
    return;
  }
  if (changing) {
    keepProblems(outcome->open.problems());
    emit changesChanged();
    return;
  }
  emit refused(problem_texts(outcome->open.problems()));
  if (outcome->refused) keepRefused(*outcome->refused, outcome->open.problems());
}

void Session::keepRefused(RefusedLog log, const Problems& problems) {
  refused_ = std::move(log);
  wanted_.clear();
  clearEdits();
  keepProblems(problems);
  emit logRefused();
}

void Session::keepProblems(const Problems& problems) {
  problems_ = problems;
  sheet_texts_ = problem_texts(problems);
}

void Session::adopt(OpenCase next) {
  const bool other_record = !same_channels(next, open_);
  const Selection kept = still_chosen(selection_, open_.report.get(), next.report.get());
  open_ = std::move(next);
  selection_ = kept;
  wanted_ = open_.files.changes.value_or(std::vector<JobChange>{});
  draft_ = open_.files.draft;
  if (!draft_) filed_text_ = open_.procedure_source;
  keepProblems({});
  if (other_record) {
    hidden_.assign(open_.has_record() ? open_.analysis.record->channels.size() : 0, false);
    for (std::size_t i = 0; i < hidden_.size(); ++i)
      hidden_[i] = open_.report->chart.traces[i].role == ChartTrace::Role::off &&
                   !open_.report->chart.traces[i].excluded;
  }
  emit caseChanged(other_record);
  if (selection_.kind != Selection::Kind::none) emit selectionChanged();
}

void Session::showIn(std::optional<TemperatureUnit> unit) {
  if (open_.files.unit == unit) return;
  open_.files.unit = unit;
  sayAgain();
}

void Session::certifyInBothUnits(bool both) {
  if (open_.files.both_units == both) return;
  open_.files.both_units = both;
  sayAgain();
}

void Session::sayAgain() {
  if (!open_.has_record()) return;
  // What is wanted and was refused stays wanted.
  const auto wanted = wanted_;
  const auto draft = draft_;
  const Problems problems = problems_;
  OpenCase next = open_;
  say_again(next);
  adopt(std::move(next));
  if (problems.empty()) return;
  wanted_ = wanted;
  draft_ = draft;
  keepProblems(problems);
  emit changesChanged();
}

void Session::select(const Selection& selection) {
  if (selection == selection_) return;
  selection_ = selection;
  emit selectionChanged();
}

void Session::setVisible(std::size_t channel, bool visible) {
  if (channel >= hidden_.size() || hidden_[channel] == !visible) return;
  hidden_[channel] = !visible;
  emit visibilityChanged();
}

void Session::setAllVisible(bool visible) {
  hidden_.assign(hidden_.size(), !visible);
  emit visibilityChanged();
}

void Session::setVisibleChannels(const std::vector<bool>& visible) {
  for (std::size_t i = 0; i < hidden_.size(); ++i) hidden_[i] = i >= visible.size() || !visible[i];
  emit visibilityChanged();
}

}  // namespace soakwright::gui
