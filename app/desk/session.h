// The state of the window: what is open, what is chosen, which channels are hidden. Everything else asks here.
//
// Opening never changes what is open before the new is whole: a refusal or a cancel leaves it alone.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <vector>

#include "app/desk/background_work.h"
#include "app/desk/open_case.h"

namespace soakwright::desk {

/// One line of one of the lists.
struct Selection {
  enum class Kind { none, requirement, finding, phase, suspect, notice };
  Kind kind = Kind::none;
  std::size_t index = 0;  ///< into the report's list of that kind
  bool operator==(const Selection&) const = default;
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
  /// Reads again what has changed on disk; where only the procedure can have, judges again and no more.
  void reload();
  /// Reads the log again with day and month in this order; none: as the job or the file says.
  void chooseDates(std::optional<DateOrder> dates);
  void closeJob();
  void closeAll();
  void cancel();

  void select(const Selection& selection);
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

 private:
  void openNamed(OpenFiles named);
  void read(const OpenFiles& kept, const OpenFiles& named);
  void judgeAgain(const QString& procedure);
  void take(const BackgroundWork::Outcome& outcome);

  BackgroundWork work_;
  OpenCase open_;
  OpenFiles pending_;  ///< what the work in hand was asked to open
  Selection selection_;
  std::vector<bool> hidden_;
};

}  // namespace soakwright::desk
