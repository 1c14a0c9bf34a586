// SPDX-License-Identifier: GPL-3.0-or-later
// Notices that a file on disk is no longer what was read.
#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QStringList>
#include <QTimer>
#include <map>

#include "app/gui/open_case.h"

namespace soakwright::gui {

class FileWatch : public QObject {
  Q_OBJECT

 public:
  explicit FileWatch(QObject* parent = nullptr);

  /// From here on these files, as they stood when they were read.
  void watch(const std::map<QString, FileStamp>& stamps);
  /// Those that differ now; also where nothing was told, as on a network drive.
  [[nodiscard]] QStringList changed() const;

  /// Looks at the files now and tells.
  void look();

 signals:
  /// Told once for each other set of files.
  void changedOnDisk(const QStringList& paths);

 private:
  QFileSystemWatcher watcher_;
  QTimer delay_;
  std::map<QString, FileStamp> stamps_;
  QStringList told_;
};

}  // namespace soakwright::gui
