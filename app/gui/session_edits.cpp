// SPDX-License-Identifier: GPL-3.0-or-later
// What was done and is in no file: each edit a step that can be undone, and what becomes of the steps when a
// file is written.

#include <algorithm>
#include <utility>

#include "app/gui/session.h"
#include "app/gui/texts/change_words.h"
#include "core/procedure/job/job_file.h"
#include "core/report/review_check.h"

namespace soakwright::gui {

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
  addStep({std::move(next), draft_, std::nullopt}, change_words(changes.back()));
}

QString Session::procedureFile() const {
  return draft_ && !draft_->in_a_file ? QString() : filed_procedure(open_);
}

void Session::changeProcedure(const std::string& text, const QString& words) {
  if (text == procedureText()) return;
  const bool in_a_file = !procedureFile().isEmpty();
  // Back to what the file says is no change of it.
  if (in_a_file && text == filed_text_) return addStep({wanted_, std::nullopt, std::nullopt}, words);
  addStep({wanted_, DraftText{text, in_a_file}, std::nullopt}, words);
}

void Session::newJob(const std::string& text, const QString& words) {
  if (!open_.has_record() || open_.read_only()) return;
  clearEdits();
  // What the job before named stays open, now by its own name.
  open_.files.log = open_.log_path;
  open_.files.procedure = filed_procedure(open_);
  open_.files.job.clear();
  open_.analysis.job = nullptr;
  wanted_.clear();
  addStep({{JobChange{std::nullopt, {}, std::nullopt, std::nullopt, text}}, draft_, std::nullopt}, words);
}

void Session::newProcedure(const std::string& text, const QString& words) {
  addStep({wanted_, DraftText{text, false}, std::nullopt}, words);
}

void Session::restoreChanges(std::vector<JobChange> changes, const std::optional<DraftText>& draft) {
  if ((changes.empty() && !draft) || (open_.log_path.isEmpty() && !refused_)) return;
  addStep({std::move(changes), draft, std::nullopt}, tr("restore unsaved changes"));
}

void Session::addStep(Edits next, const QString& words) {
  // What was read from a report cannot be changed; a log that was refused meanwhile can be settled.
  if (open_.read_only() && (!refused_ || next.review)) return;
  if (edits_.count() == 0) states_ = {Edits{wanted_, draft_, review_}};
  states_.resize(static_cast<std::size_t>(edits_.index()) + 1);
  states_.push_back(std::move(next));
  edits_.push(new EditStep(*this, states_.size() - 1, words));
}

void Session::wantState(std::size_t state) {
  if (state >= states_.size()) return;
  const Edits& edits = states_[state];
  if (wanted_ == edits.job && draft_ == edits.procedure) {
    if (review_ != edits.review) applyReview(edits.review);
    return;
  }
  const bool same_job = wanted_ == edits.job && !refused_ && !busy() &&
                        wanted_ == open_.files.changes.value_or(std::vector<JobChange>{});
  const bool has_procedure = edits.procedure || !filed_procedure(open_).isEmpty();
  wanted_ = edits.job;
  draft_ = edits.procedure;
  pending_review_ = edits.review;
  if (same_job && has_procedure)
    evaluateAsWanted();
  else
    readAsWanted();
}

Review Session::reviewNow() const {
  Review now = open_.analysis.review ? *open_.analysis.review : Review{};
  now.result_sha256 = result_digest(open_.analysis);
  return now;
}

void Session::review(const Review& next, const QString& words) {
  if (!open_.analysis.verdicts || !wanted_.empty() || draft_ || busy()) return;
  addStep({wanted_, draft_, next}, words);
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
  named.draft = draft_;
  read(kept, named, Purpose::again);
}

void Session::procedureWritten(const QString& path) {
  if (!draft_) return;
  const DraftText saved = *draft_;
  for (Edits& state : states_) {
    if (state.procedure && state.procedure->text == saved.text)
      state.procedure.reset();
    else if (state.procedure)
      state.procedure->in_a_file = true;
    else if (saved.in_a_file)
      state.procedure = DraftText{filed_text_};
  }
  // What was there before a new procedure is no text of its file.
  if (!saved.in_a_file && wanted_.empty() && !review_) clearEdits();
  draft_.reset();
  filed_text_ = saved.text;
  open_.files.draft.reset();
  open_.files.procedure = path;
  open_.procedure_path = path;
  open_.procedure_source = saved.text;
  open_.stamps[path] = FileStamp::of(path);
  emit changesChanged();
  // With other changes refused, the record is read again when they are put right.
  if (problems_.empty() && !refused_) evaluateAgain(path);
}

}  // namespace soakwright::gui
