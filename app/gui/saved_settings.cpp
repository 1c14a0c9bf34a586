// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/saved_settings.h"

#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

namespace soakwright::gui {
namespace {

constexpr int kMostRecent = 12;
const QString kRecent = QStringLiteral("files/recent");
const QString kChanges = QStringLiteral("changes/");
const QString kLast = QStringLiteral("files/last");

}  // namespace

SavedSettings::SavedSettings() : settings_(QStringLiteral("Soakwright"), QStringLiteral("gui")) {}

SavedSettings::SavedSettings(const QString& file) : settings_(file, QSettings::IniFormat) {}

QStringList SavedSettings::recent() const { return settings_.value(kRecent).toStringList(); }

QStringList SavedSettings::last() const { return settings_.value(kLast).toStringList(); }

void SavedSettings::remember(const OpenFiles& files) {
  QStringList paths;
  for (const QString& path : files.all()) paths.append(QFileInfo(path).absoluteFilePath());
  if (paths.isEmpty()) return;
  QStringList recent = this->recent();
  for (auto path = paths.rbegin(); path != paths.rend(); ++path) {
    recent.removeAll(*path);
    recent.prepend(*path);
  }
  settings_.setValue(kRecent, QStringList(recent.mid(0, kMostRecent)));
  settings_.setValue(kLast, paths);
  settings_.sync();
}

void SavedSettings::keepChanges(const QString& log_sha256, const std::vector<JobChange>& changes) {
  if (log_sha256.isEmpty()) return;
  QJsonArray list;
  for (const JobChange& change : changes) {
    QJsonObject item{{QStringLiteral("key"), QString::fromStdString(change.key)}};
    if (change.value) item[QStringLiteral("value")] = QString::fromStdString(*change.value);
    if (change.column) {
      QJsonArray names;
      for (const std::string& name : change.column->names) names.append(QString::fromStdString(name));
      item[QStringLiteral("column")] = names;
    }
    list.append(item);
  }
  if (changes.empty())
    settings_.remove(kChanges + log_sha256);
  else
    settings_.setValue(kChanges + log_sha256, QJsonDocument(list).toJson(QJsonDocument::Compact));
  settings_.sync();
}

std::vector<JobChange> SavedSettings::changes(const QString& log_sha256) const {
  std::vector<JobChange> changes;
  if (log_sha256.isEmpty()) return changes;
  const QJsonArray list =
      QJsonDocument::fromJson(settings_.value(kChanges + log_sha256).toByteArray()).array();
  for (const QJsonValue& item : list) {
    JobChange change;
    change.key = item[QStringLiteral("key")].toString().toStdString();
    const QJsonValue value = item[QStringLiteral("value")];
    if (value.isString()) change.value = value.toString().toStdString();
    const QJsonArray names = item[QStringLiteral("column")].toArray();
    if (!names.isEmpty()) change.column.emplace();
    for (const QJsonValue& name : names) change.column->names.push_back(name.toString().toStdString());
    changes.push_back(std::move(change));
  }
  return changes;
}

void SavedSettings::keepLayout(const QString& part, const QByteArray& state) {
  settings_.setValue(QStringLiteral("layout/") + part, state);
}

QByteArray SavedSettings::layout(const QString& part) const {
  return settings_.value(QStringLiteral("layout/") + part).toByteArray();
}

}  // namespace soakwright::gui
