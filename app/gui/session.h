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

#include "app/gui/open_case.h"
#include "app/gui/refused_log.h"
#include "app/gui/work/background_work.h"

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
  std::optional<Review> review;  ///< none: as its file says, or no review
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
  /// Every edit of the job, to be undone one by one, also after it was saved.
  [[nodiscard]] QUndoStack& edits() { return edits_; }
  /// Changes of an earlier run that were never saved.
  void restoreChanges(std::vector<JobChange> changes);
  /// The job's text after each edit that can be undone or done again, for the job at `path`. To be made
  /// before the job is written there, and handed to jobWritten().
  [[nodiscard]] std::vector<std::string> jobTexts(const QString& path) const;
  /// The changes are in the job at `path` now. Undo leads back to the texts before.
  void jobWritten(const QString& path, const std::vector<std::string>& texts);
  /// Leaves a refused log alone again.
  void dropRefused();
  [[nodiscard]] const std::vector<JobChange>& wanted() const { return wanted_; }
  [[nodiscard]] bool unsaved() const { return !wanted_.empty() || review_; }
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
  /// SHA-256 of the log that changes belong to; empty where there is none.
  [[nodiscard]] QString logSha() const;
  void closeJob();
  void closeAll();
  void cancel();

  void select(const Selection& selection);
  /// Shows every temperature in that unit; none: the procedure's.
  void showIn(std::optional<TemperatureUnit> unit);
  void setVisible(std::size_t channel, bool visible);
  void setAllVisible(bool visible);
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
  /// A log was refused that can be settled on the reading sheet.
  void logRefused();
  /// Other changes are wanted, or what became of them is known.
  void changesChanged();

 private:
  /// What the work in hand is for; edits can be undone after all but the first.
  enum class Purpose { open, change, again };
  void openNamed(OpenFiles named);
  void read(const OpenFiles& kept, const OpenFiles& named, Purpose purpose = Purpose::open);
  void evaluateAgain(const QString& procedure);
  void take(const BackgroundWork::Outcome& outcome);
  class EditStep;
  void applyReview(const std::optional<Review>& review);
  void readAsWanted();
  void addStep(Edits next, const QString& words);
  void wantState(std::size_t state);
  void clearEdits();
  void keepRefused(RefusedLog log, const QStringList& texts);

  BackgroundWork work_;
  OpenCase open_;
  OpenFiles pending_;  ///< what the work in hand was asked to open
  Purpose purpose_ = Purpose::open;
  std::vector<JobChange> wanted_;
  std::optional<Review> review_;          ///< decided, and in no file
  std::optional<Review> pending_review_;  ///< to be put back once the record is read
  std::shared_ptr<const Review> file_review_;
  QUndoStack edits_;
  /// What each step of edits_ leads from and to; the first is where nothing was edited.
  std::vector<Edits> states_;
  std::optional<RefusedLog> refused_;
  QStringList sheet_texts_;
  Selection selection_;
  std::vector<bool> hidden_;
};

}  // namespace soakwright::gui
