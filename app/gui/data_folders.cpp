// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/data_folders.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

namespace soakwright::gui {
namespace {

QString folder_of(const QString& name) {
  const QDir program(QCoreApplication::applicationDirPath());
  for (const QString& place : {name, QStringLiteral(SOAKWRIGHT_DATA_FROM_PROGRAM "/") + name}) {
    const QFileInfo found(program.filePath(place));
    if (found.isDir()) return QDir::cleanPath(found.absoluteFilePath());
  }
  return {};
}

}  // namespace

DataFolders DataFolders::installed() {
  DataFolders folders;
  const QString own = folder_of(QStringLiteral("rules"));
  if (!own.isEmpty()) folders.rules.append(own);
  const QString user = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
                       QStringLiteral("/soakwright/rules");
  if (QFileInfo(user).isDir()) folders.rules.append(user);
  folders.samples = folder_of(QStringLiteral("samples"));
  folders.manual = folder_of(QStringLiteral("manual"));
  return folders;
}

QStringList sample_jobs(const QString& samples) {
  QStringList jobs;
  if (samples.isEmpty()) return jobs;
  const QDir all(samples);
  for (const QString& folder : all.entryList(QDir::Dirs | QDir::NoDotAndDotDot, QDir::Name)) {
    const QString job = all.filePath(folder + QStringLiteral("/job.toml"));
    if (QFileInfo::exists(job)) jobs.append(job);
  }
  return jobs;
}

}  // namespace soakwright::gui
