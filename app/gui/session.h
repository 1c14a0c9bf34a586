// SPDX-License-Identifier: GPL-3.0-or-later
// The state of the window: what is open, what is chosen, which channels are hidden. Everything else asks
// here.
//
// Opening never changes what is open before the new is whole: a refusal or a cancel leaves it alone.
#pragma once

#include <QObject>
#include <QStringList>
#include <QUndoStack>
#include <optional>
#include <vector>

#include "app/gui/background/background_work.h"
#include "app/gui/open_case.h"
#include "app/gui/refused_log.h"

namespace soakwright::gui {

/// One line of one of the lists.
struct Selection {
  enum class Kind { none, requirement, finding, phase, suspect, notice };
  Kind kind = Kind::none;
  std::size_t index = 0;  ///< into the report's list of that kind
  bool operator==(const Selection&) const = default;
};

/// What was done and is in no file yet.
struct Edits {
  std::vector<JobChange> job;
  std::optional<DraftText> procedure;  ///< none: as its file says, or no procedure
  std::optional<Review> review;        ///< none: as its file says, or no review
  bool operator==(const Edits&) const = default;
};

class Session : public QObject {
  Q_OBJECT

 public:
  explicit Session(QObject* parent = nullptr);

  [[nodiscard]] const OpenCase& open() const { return open_; }
  [[nodiscard]] const Report* report() const { return open_.report.get(); }
  [[nodiscard]] const Selection& selection() const { return selection_; }
  [[nodiscard]] bool visible(std::size_t channel) const {
    return channel >= hidden_.size() || !hidden_[channel];
  }
  [[nodiscard]] bool busy() const { return work_.busy(); }

  /// Opens what is named, each file as what it says it is, on top of what is open.
  void openFiles(const QStringList& paths);
  /// Opens one file as what the user says it is.
  void openAs(FileKind kind, const QString& path);
  /// Reads again what has changed on disk; where only the procedure can have, evaluates again and no more.
  void reload();
  /// Settles something about the log, or with no value takes it back, and reads it again. Where that is
  /// refused, what was open stays open and the change stays wanted, since another may belong to it. Several
  /// at once are undone at once.
  void change(const std::vector<JobChange>& changes);
  void change(const JobChange& change) { this->change(std::vector{change}); }
  /// A job that is in no file yet takes the place of the open one; log and procedure stay.
  void newJob(const std::string& text, const QString& words);
  /// The text of the procedure is to be `text`; evaluated at once where a record is open. Where it is
  /// refused, what was evaluated before stays and the text stays wanted.
  void changeProcedure(const std::string& text, const QString& words);
  /// A procedure that is in no file yet takes the place of the open one.
  void newProcedure(const std::string& text, const QString& words);
  /// Every edit of job, procedure and review, to be undone one by one, also after it was saved.
  [[nodiscard]] QUndoStack& edits() { return edits_; }
  /// Changes of an earlier run that were never saved.
  void restoreChanges(std::vector<JobChange> changes, const std::optional<DraftText>& draft);
  /// The job's text after each edit that can be undone or done again, for the job at `path`. To be made
  /// before the job is written there, and handed to jobWritten().
  [[nodiscard]] std::vector<std::string> jobTexts(const QString& path) const;
  /// The changes are in the job at `path` now. Undo leads back to the texts before.
  void jobWritten(const QString& path, const std::vector<std::string>& texts);
  /// The text that is wanted is in the file at `path` now. Undo leads back to the texts before.
  void procedureWritten(const QString& path);
  /// Leaves a refused log alone again.
  void dropRefused();
  [[nodiscard]] const std::vector<JobChange>& wanted() const { return wanted_; }
  [[nodiscard]] bool unsaved() const { return !wanted_.empty() || review_ || draft_; }
  /// The procedure's text that is wanted and in no file.
  [[nodiscard]] const std::optional<DraftText>& draft() const { return draft_; }
  /// The procedure's text as it is wanted now; empty where there is none.
  [[nodiscard]] std::string procedureText() const { return draft_ ? draft_->text : filed_text_; }
  /// As its file said when it was read.
  [[nodiscard]] const std::string& filedProcedure() const { return filed_text_; }
  /// The file that it is saved in; empty where there is none yet.
  [[nodiscard]] QString procedureFile() const;
  [[nodiscard]] bool reviewUnsaved() const { return review_.has_value(); }
  /// What is decided now; an empty review of this result where there is none.
  [[nodiscard]] Review reviewNow() const;
  /// Decides so. Only while no changed settings are unsaved: a review is of a result that files give.
  void review(const Review& next, const QString& words);
  /// `text` is in the file at `path` now. Undo leads back to the decisions before.
  Problems reviewWritten(const QString& path, const std::string& text);
  [[nodiscard]] const std::optional<RefusedLog>& refusedLog() const { return refused_; }
  /// Why the log could not be read as it is wanted; as the command line prints it.
  [[nodiscard]] const QStringList& sheetTexts() const { return sheet_texts_; }
  /// The same, with file and line of each.
  [[nodiscard]] const Problems& problems() const { return problems_; }
  /// SHA-256 of the log that changes belong to; empty where there is none.
  [[nodiscard]] QString logSha() const;
  void closeJob();
  void closeAll();
  void cancel();

  void select(const Selection& selection);
  /// Shows every temperature in that unit; none: the procedure's.
  void showIn(std::optional<TemperatureUnit> unit);
  /// Whether the report's certificate gives its figures in °C and in °F.
  void certifyInBothUnits(bool both);
  void setVisible(std::size_t channel, bool visible);
  void setAllVisible(bool visible);
  /// By channel of the record.
  void setVisibleChannels(const std::vector<bool>& visible);
  /// Shows a case as if it had just been read.
  void adopt(OpenCase next);

 signals:
  /// Something new is open; `record` tells whether its channels are others than before.
  void caseChanged(bool record);
  void selectionChanged();
  void visibilityChanged();
  void busyChanged(bool busy);
  void progressed(double share);
  /// Refused: each text as the command line prints it behind its name.
  void refused(const QStringList& texts);
  /// A log was refused that can be settled on the import settings.
  void logRefused();
  /// Other changes are wanted, or what became of them is known.
  void changesChanged();

 private:
  /// What the work in hand is for; edits can be undone after all but the first.
  enum class Purpose { open, change, again };
  void openNamed(OpenFiles named);
  void read(const OpenFiles& kept, const OpenFiles& named, Purpose purpose = Purpose::open);
  void evaluateAgain(const QString& procedure);
  void evaluateAsWanted();
  /// The report anew; edits and refusals stay.
  void sayAgain();
  void take(const BackgroundWork::Outcome& outcome);
  class EditStep;
  void applyReview(const std::optional<Review>& review);
  void readAsWanted();
  void addStep(Edits next, const QString& words);
  void wantState(std::size_t state);
  void clearEdits();
  void keepRefused(RefusedLog log, const Problems& problems);
  void keepProblems(const Problems& problems);

  BackgroundWork work_;
  OpenCase open_;
  OpenFiles pending_;  ///< what the work in hand was asked to open
  Purpose purpose_ = Purpose::open;
  std::vector<JobChange> wanted_;
  std::optional<DraftText> draft_;
  std::string filed_text_;                ///< of the procedure, as its file said when it was read
  std::optional<Review> review_;          ///< decided, and in no file
  std::optional<Review> pending_review_;  ///< to be put back once the record is read
  std::shared_ptr<const Review> file_review_;
  QUndoStack edits_;
  /// What each step of edits_ leads from and to; the first is where nothing was edited.
  std::vector<Edits> states_;
  std::optional<RefusedLog> refused_;
  QStringList sheet_texts_;
  Problems problems_;
  Selection selection_;
  std::vector<bool> hidden_;
};

}  // namespace soakwright::gui
