// SPDX-License-Identifier: GPL-3.0-or-later
// What the window remembers from one run to the next: its layout, the files opened lately, and those that
// were open last. Written when it happens, not at the end, so that a crash loses nothing.
#pragma once

#include <QByteArray>
#include <QSettings>
#include <QStringList>

#include "app/gui/open_files.h"

namespace soakwright::gui {

class SavedSettings {
 public:
  /// The user's own settings.
  SavedSettings();
  /// In a file of its own.
  explicit SavedSettings(const QString& file);

  [[nodiscard]] QStringList recent() const;
  [[nodiscard]] QStringList last() const;
  void remember(const OpenFiles& files);

  /// What was settled about the log of that SHA-256 and is not in a job yet; empty: nothing is.
  void keepChanges(const QString& log_sha256, const std::vector<JobChange>& changes);
  [[nodiscard]] std::vector<JobChange> changes(const QString& log_sha256) const;

  void keepLayout(const QString& part, const QByteArray& state);
  [[nodiscard]] QByteArray layout(const QString& part) const;

 private:
  QSettings settings_;
};

}  // namespace soakwright::gui
