// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/session.h"

#include <algorithm>
#include <utility>

#include "app/pdf/shown_text.h"

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
  }
}

OpenFiles together(OpenFiles first, const OpenFiles& then) {
  for (QString OpenFiles::*file :
       {&OpenFiles::log, &OpenFiles::procedure, &OpenFiles::job, &OpenFiles::review})
    if (!(then.*file).isEmpty()) first.*file = then.*file;
  if (then.changes) first.changes = then.changes;
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
  if (chosen.kind != Selection::Kind::requirement || !before || !after) return {};
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
  for (const QString& path : paths) name_file(named, file_kind(path), path);
  openNamed(named);
}

void Session::openAs(FileKind kind, const QString& path) {
  OpenFiles named;
  name_file(named, kind, path);
  openNamed(named);
}

void Session::openNamed(OpenFiles named) {
  if (named.none()) return;
  // What is still being read is opened together with what comes now, not dropped for it.
  if (busy()) named = together(pending_, named);
  const bool only_procedure = named.log.isEmpty() && named.job.isEmpty() && named.review.isEmpty();
  if (only_procedure && open_.has_record())
    evaluateAgain(named.procedure);
  else
    read(open_.files, named);
}

void Session::read(const OpenFiles& kept, const OpenFiles& named, bool changing) {
  pending_ = named;
  changing_ = changing;
  work_.start([kept, named, changing](const Watch& watch) {
    WorkOutcome outcome{read_case(kept, named, watch)};
    // What is being changed is known already.
    if (!outcome.open && !changing)
      outcome.refused = refused_log(outcome.open.problems(), kept, named, watch);
    return outcome;
  });
}

void Session::evaluateAgain(const QString& procedure) {
  pending_ = {};
  changing_ = false;
  pending_.procedure = procedure;
  work_.start(
      [open = open_, procedure](const Watch&) { return WorkOutcome{evaluate_case_again(open, procedure)}; });
}

void Session::reload() {
  if (open_.files.none()) return;
  if (must_read_again(open_) || open_.procedure_path.isEmpty())
    read(open_.files, {});
  else
    evaluateAgain(open_.procedure_path);
}

void Session::change(const JobChange& change) {
  if (open_.log_path.isEmpty() && !refused_) return;
  std::vector<JobChange> next = wanted_;
  std::erase_if(next,
                [&](const JobChange& old) { return old.column == change.column && old.key == change.key; });
  const OpenFiles& files = refused_ ? refused_->named : open_.files;
  const bool in_a_file = !files.job.isEmpty() || (refused_ && !refused_->kept.job.isEmpty());
  if (change.value || in_a_file) next.push_back(change);
  if (next == wanted_) return;
  history_.push_back(std::exchange(wanted_, std::move(next)));
  readAsWanted();
}

void Session::undoChange() {
  if (history_.empty()) return;
  wanted_ = std::move(history_.back());
  history_.pop_back();
  readAsWanted();
}

void Session::restoreChanges(std::vector<JobChange> changes) {
  if (changes.empty() || (open_.log_path.isEmpty() && !refused_)) return;
  history_.push_back(std::exchange(wanted_, std::move(changes)));
  readAsWanted();
}

void Session::readAsWanted() {
  OpenFiles named = refused_ ? refused_->named : OpenFiles{};
  named.changes = wanted_;
  read(refused_ ? refused_->kept : open_.files, named, true);
  emit changesChanged();
}

void Session::jobWritten(const QString& path) {
  wanted_.clear();
  history_.clear();
  emit changesChanged();
  OpenFiles kept = refused_ ? refused_->kept : open_.files;
  OpenFiles named = refused_ ? refused_->named : OpenFiles{};
  kept.changes.reset();
  if (named.log.isEmpty()) named.log = refused_ ? refused_->path : open_.log_path;
  if (named.procedure.isEmpty()) named.procedure = refused_ ? kept.procedure : open_.procedure_path;
  named.job = path;
  named.changes = std::vector<JobChange>{};
  read(kept, named);
}

void Session::dropRefused() {
  if (!refused_) return;
  refused_.reset();
  sheet_texts_.clear();
  history_.clear();
  wanted_ = open_.files.changes.value_or(std::vector<JobChange>{});
  emit changesChanged();
}

QString Session::logSha() const {
  if (refused_) return refused_->sha256;
  return open_.has_record() ? QString::fromStdString(open_.analysis.record->sha256) : QString();
}

void Session::closeJob() {
  if (open_.files.job.isEmpty()) return;
  // What the job named stays open, now by its own name.
  OpenFiles files = open_.files;
  files.log = open_.log_path;
  files.procedure = open_.procedure_path;
  files.job.clear();
  read(files, {});
}

void Session::closeAll() {
  work_.cancel();
  refused_.reset();
  adopt({});
}

void Session::cancel() { work_.cancel(); }

void Session::take(const BackgroundWork::Outcome& outcome) {
  const bool changing = std::exchange(changing_, false);
  if (outcome->open.ok()) {
    refused_.reset();
    if (!changing) history_.clear();
    adopt(outcome->open.value());
    return;
  }
  QStringList texts;
  for (const Problem& problem : outcome->open.problems()) texts.append(pdf::shown_text(problem.text()));
  if (changing) {
    sheet_texts_ = texts;
    emit changesChanged();
    return;
  }
  emit refused(texts);
  if (outcome->refused) keepRefused(*outcome->refused, texts);
}

void Session::keepRefused(RefusedLog log, const QStringList& texts) {
  refused_ = std::move(log);
  wanted_.clear();
  history_.clear();
  sheet_texts_ = texts;
  emit logRefused();
}

void Session::adopt(OpenCase next) {
  const bool other_record = !same_channels(next, open_);
  const Selection kept = still_chosen(selection_, open_.report.get(), next.report.get());
  open_ = std::move(next);
  selection_ = kept;
  wanted_ = open_.files.changes.value_or(std::vector<JobChange>{});
  sheet_texts_.clear();
  if (other_record) {
    hidden_.assign(open_.has_record() ? open_.analysis.record->channels.size() : 0, false);
    for (std::size_t i = 0; i < hidden_.size(); ++i)
      hidden_[i] = open_.analysis.record->channels[i].role == ThermocoupleRole::off;
  }
  emit caseChanged(other_record);
  if (selection_.kind != Selection::Kind::none) emit selectionChanged();
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

}  // namespace soakwright::gui
