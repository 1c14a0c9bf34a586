// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/file_watch.h"

#include <QFileInfo>

namespace soakwright::gui {
namespace {

constexpr int kDelay_ms = 250;  ///< a file is often written in several steps

}  // namespace

FileWatch::FileWatch(QObject* parent) : QObject(parent) {
  delay_.setSingleShot(true);
  delay_.setInterval(kDelay_ms);
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, [this] { delay_.start(); });
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, [this] { delay_.start(); });
  connect(&delay_, &QTimer::timeout, this, &FileWatch::look);
}

void FileWatch::watch(const std::map<QString, FileStamp>& stamps) {
  stamps_ = stamps;
  if (const QStringList old = watcher_.files() + watcher_.directories(); !old.isEmpty())
    watcher_.removePaths(old);
  QStringList paths;
  for (const auto& [path, stamp] : stamps_) {
    if (QFileInfo::exists(path)) paths.append(path);
    // A file that is replaced by another of its name is only seen by its folder.
    const QString folder = QFileInfo(path).absolutePath();
    if (!paths.contains(folder) && QFileInfo::exists(folder)) paths.append(folder);
  }
  if (!paths.isEmpty()) watcher_.addPaths(paths);
  if (!told_.isEmpty()) {
    told_.clear();
    emit changedOnDisk({});
  }
  look();
}

QStringList FileWatch::changed() const {
  QStringList paths;
  for (const auto& [path, stamp] : stamps_)
    if (!(FileStamp::of(path) == stamp)) paths.append(path);
  return paths;
}

void FileWatch::look() {
  const QStringList now = changed();
  for (const auto& [path, stamp] : stamps_)
    if (!watcher_.files().contains(path) && QFileInfo::exists(path)) watcher_.addPath(path);
  if (now == told_) return;
  told_ = now;
  emit changedOnDisk(now);
}

}  // namespace soakwright::gui
