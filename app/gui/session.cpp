// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/session.h"

#include <algorithm>
#include <utility>

#include "app/gui/texts/change_words.h"
#include "app/pdf/shown_text.h"
#include "core/procedure/job/job_file.h"
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
  }
  return false;
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

/// One edit: leads to its state and back to the one before.
class Session::EditStep : public QUndoCommand {
 public:
  EditStep(Session& session, std::size_t state, const QString& words)
      : QUndoCommand(words), session_(session), state_(state) {}
  void redo() override { session_.wantState(state_); }
  void undo() override { session_.wantState(state_ - 1); }

 private:
  Session& session_;
  std::size_t state_;
};

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

void Session::read(const OpenFiles& kept, const OpenFiles& named, Purpose purpose) {
  pending_ = named;
  purpose_ = purpose;
  const bool changing = purpose == Purpose::change;
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
  purpose_ = Purpose::again;
  pending_.procedure = procedure;
  work_.start(
      [open = open_, procedure](const Watch&) { return WorkOutcome{evaluate_case_again(open, procedure)}; });
}

void Session::reload() {
  if (open_.files.none()) return;
  if (must_read_again(open_) || open_.procedure_path.isEmpty())
    read(open_.files, {}, Purpose::again);
  else
    evaluateAgain(open_.procedure_path);
}

void Session::change(const std::vector<JobChange>& changes) {
  if (open_.log_path.isEmpty() && !refused_) return;
  std::vector<JobChange> next = wanted_;
  const OpenFiles& files = refused_ ? refused_->named : open_.files;
  const bool in_a_file = !files.job.isEmpty() || (refused_ && !refused_->kept.job.isEmpty());
  for (const JobChange& change : changes) {
    if (change.whole) next.clear();
    const bool setting = !change.whole && !change.added;
    if (setting)
      std::erase_if(next, [&](const JobChange& old) {
        return !old.whole && !old.added && old.column == change.column && old.key == change.key &&
               old.table == change.table;
      });
    const bool over_text = !next.empty() && next.front().whole;
    if (!setting || change.value || in_a_file || over_text) next.push_back(change);
  }
  if (next == wanted_) return;
  addStep({std::move(next), std::nullopt}, change_words(changes.back()));
}

void Session::restoreChanges(std::vector<JobChange> changes) {
  if (changes.empty() || (open_.log_path.isEmpty() && !refused_)) return;
  addStep({std::move(changes), std::nullopt}, tr("restore unsaved changes"));
}

void Session::addStep(Edits next, const QString& words) {
  if (edits_.count() == 0) states_ = {Edits{wanted_, review_}};
  states_.resize(static_cast<std::size_t>(edits_.index()) + 1);
  states_.push_back(std::move(next));
  edits_.push(new EditStep(*this, states_.size() - 1, words));
}

void Session::wantState(std::size_t state) {
  if (state >= states_.size()) return;
  const Edits& edits = states_[state];
  if (wanted_ == edits.job) {
    if (review_ != edits.review) applyReview(edits.review);
    return;
  }
  wanted_ = edits.job;
  pending_review_ = edits.review;
  readAsWanted();
}

Review Session::reviewNow() const {
  Review now = open_.analysis.review ? *open_.analysis.review : Review{};
  now.result_sha256 = result_digest(open_.analysis);
  return now;
}

void Session::review(const Review& next, const QString& words) {
  if (!open_.analysis.verdicts || !wanted_.empty() || busy()) return;
  addStep({wanted_, next}, words);
}

/// A review of another result is none of this one.
void Session::applyReview(const std::optional<Review>& review) {
  OpenCase next = open_;
  const std::string digest = result_digest(next.analysis);
  review_.reset();
  next.analysis.review = file_review_;
  if (review && review->result_sha256 == digest) {
    review_ = review;
    auto shown = std::make_shared<Review>(*review);
    shown->file = tr("review, not saved").toStdString();
    shown->sha256.clear();
    next.analysis.review = shown;
  }
  next.analysis.result_sha256 = next.analysis.review ? digest : std::string();
  say_again(next);
  adopt(std::move(next));
  emit changesChanged();
}

Problems Session::reviewWritten(const QString& path, const std::string& text) {
  auto saved = parse_review(text, path.toStdString());
  if (!saved) return saved.problems();
  Review before = file_review_ ? *file_review_ : Review{};
  if (!before.result_sha256) before.result_sha256 = result_digest(open_.analysis);
  const auto now = static_cast<std::size_t>(edits_.index());
  for (std::size_t i = 0; i < states_.size(); ++i) {
    if (i == now)
      states_[i].review.reset();
    else if (!states_[i].review)
      states_[i].review = before;
  }
  file_review_ = std::make_shared<const Review>(std::move(saved).value());
  open_.files.review = path;
  open_.stamps[path] = FileStamp::of(path);
  applyReview(std::nullopt);
  return {};
}

void Session::clearEdits() {
  edits_.clear();
  states_.clear();
}

void Session::readAsWanted() {
  OpenFiles named = refused_ ? refused_->named : OpenFiles{};
  named.changes = wanted_;
  read(refused_ ? refused_->kept : open_.files, named, Purpose::change);
  emit changesChanged();
}

std::vector<std::string> Session::jobTexts(const QString& path) const {
  std::vector<std::string> texts;
  for (const Edits& state : states_) {
    auto text = job_text_of(path, state.job, open_.log_path, open_.procedure_path);
    // Such a step is left out by jobWritten().
    texts.push_back(text ? std::move(text).value() : std::string());
  }
  return texts;
}

void Session::jobWritten(const QString& path, const std::vector<std::string>& texts) {
  const auto now = static_cast<std::size_t>(edits_.index());
  const std::string saved = now < texts.size() ? texts[now] : std::string();
  if (saved.empty() || texts.size() != states_.size()) {
    clearEdits();
  } else {
    for (std::size_t i = 0; i < states_.size(); ++i)
      states_[i].job = texts[i].empty() || texts[i] == saved
                           ? std::vector<JobChange>{}
                           : std::vector<JobChange>{{std::nullopt, {}, std::nullopt, std::nullopt, texts[i]}};
  }
  wanted_.clear();
  emit changesChanged();
  OpenFiles kept = refused_ ? refused_->kept : open_.files;
  OpenFiles named = refused_ ? refused_->named : OpenFiles{};
  kept.changes.reset();
  if (named.log.isEmpty()) named.log = refused_ ? refused_->path : open_.log_path;
  if (named.procedure.isEmpty()) named.procedure = refused_ ? kept.procedure : open_.procedure_path;
  named.job = path;
  named.changes = std::vector<JobChange>{};
  read(kept, named, Purpose::again);
}

void Session::dropRefused() {
  if (!refused_) return;
  refused_.reset();
  sheet_texts_.clear();
  clearEdits();
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
  files.changes.reset();
  read(files, {});
}

void Session::closeAll() {
  work_.cancel();
  refused_.reset();
  clearEdits();
  review_.reset();
  file_review_.reset();
  adopt({});
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
  clearEdits();
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
      hidden_[i] = open_.report->chart.traces[i].role == ChartTrace::Role::off &&
                   !open_.report->chart.traces[i].excluded;
  }
  emit caseChanged(other_record);
  if (selection_.kind != Selection::Kind::none) emit selectionChanged();
}

void Session::showIn(std::optional<TemperatureUnit> unit) {
  if (open_.files.unit == unit) return;
  open_.files.unit = unit;
  if (!open_.has_record()) return;
  OpenCase next = open_;
  say_again(next);
  adopt(std::move(next));
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
