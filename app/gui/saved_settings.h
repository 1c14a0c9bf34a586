// SPDX-License-Identifier: GPL-3.0-or-later
// What the window remembers from one run to the next: its layout, the recent files, and those that
// were open last. Written when it happens, not at the end, so that a crash loses nothing.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QSettings>
#include <QStringList>

#include "app/gui/open_files.h"
#include "app/gui/preferences.h"

namespace soakwright::gui {

/// Changes belong to one log and one job: the same log under another name is still the same log, and a change
/// made for one job says nothing about another.
struct ChangesPlace {
  QString log_sha256;
  QString job;        ///< its path; empty where there is none
  bool left = false;  ///< left by a run that ended without a word, and not decided on yet
  [[nodiscard]] QString key() const;
};

/// What was changed and is in no file.
struct UnsavedWork {
  std::vector<JobChange> job = {};
  std::optional<DraftText> draft = std::nullopt;
  [[nodiscard]] bool none() const { return job.empty() && !draft; }
  bool operator==(const UnsavedWork&) const = default;
};

class SavedSettings {
 public:
  /// The user's own settings.
  SavedSettings();
  /// In a file of its own.
  explicit SavedSettings(const QString& file);

  [[nodiscard]] QStringList recent() const;
  [[nodiscard]] QStringList last() const;
  void remember(const OpenFiles& files);

  /// What was changed there and is in no file yet.
  void keepChanges(const ChangesPlace& place, const UnsavedWork& work);
  [[nodiscard]] UnsavedWork changes(const ChangesPlace& place) const;
  /// When they were kept last; not valid if there are none.
  [[nodiscard]] QDateTime changedAt(const ChangesPlace& place) const;

  /// What was never set, or is no longer known, is as at the first start.
  [[nodiscard]] Preferences preferences() const;
  void keepPreferences(const Preferences& preferences);

  void keepLayout(const QString& part, const QByteArray& state);
  [[nodiscard]] QByteArray layout(const QString& part) const;

 private:
  QSettings settings_;
};

}  // namespace soakwright::gui
