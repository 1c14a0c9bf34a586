// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/saved_settings.h"

#include <QCryptographicHash>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

namespace soakwright::gui {
namespace {

constexpr int kMostRecentKept = 12;
const QString kRecent = QStringLiteral("files/recent");
const QString kChanges = QStringLiteral("changes/");
const QString kList = QStringLiteral("/list");
const QString kWhen = QStringLiteral("/when");
const QString kProcedure = QStringLiteral("/procedure");
const QString kInAFile = QStringLiteral("/procedure-in-a-file");
const QString kLast = QStringLiteral("files/last");
const QString kPreferences = QStringLiteral("preferences/");
const QString kColours = QStringLiteral("colours");
const QString kLight = QStringLiteral("light");
const QString kDark = QStringLiteral("dark");
const QString kTextSize = QStringLiteral("text-percent");
const QString kUnit = QStringLiteral("temperatures");
const QString kCelsius = QStringLiteral("celsius");
const QString kFahrenheit = QStringLiteral("fahrenheit");
const QString kTime = QStringLiteral("time-axis");
const QString kRecord = QStringLiteral("record");
const QString kHold = QStringLiteral("hold");
const QString kTrusted = QStringLiteral("trusted-certificates");

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
  settings_.setValue(kRecent, QStringList(recent.mid(0, kMostRecentKept)));
  settings_.setValue(kLast, paths);
  settings_.sync();
}

void SavedSettings::keepChanges(const ChangesPlace& place, const UnsavedWork& work) {
  if (place.log_sha256.isEmpty()) return;
  QJsonArray list;
  for (const JobChange& change : work.job) {
    QJsonObject item{{QStringLiteral("key"), QString::fromStdString(change.key)}};
    if (change.value) item[QStringLiteral("value")] = QString::fromStdString(*change.value);
    if (change.table != "import") item[QStringLiteral("table")] = QString::fromStdString(change.table);
    if (change.whole) item[QStringLiteral("whole")] = QString::fromStdString(*change.whole);
    if (change.added) {
      QJsonArray keys;
      for (const auto& [key, value] : change.added->keys)
        keys.append(QJsonArray{QString::fromStdString(key), QString::fromStdString(value)});
      item[QStringLiteral("list")] = QString::fromStdString(change.added->list);
      item[QStringLiteral("keys")] = keys;
    }
    if (change.column) {
      QJsonArray names;
      for (const std::string& name : change.column->names) names.append(QString::fromStdString(name));
      item[QStringLiteral("column")] = names;
    }
    list.append(item);
  }
  const QString key = kChanges + place.key();
  settings_.remove(key);
  if (work.draft) {
    settings_.setValue(key + kProcedure, QByteArray::fromStdString(work.draft->text));
    settings_.setValue(key + kInAFile, work.draft->in_a_file);
  }
  if (!work.none()) {
    settings_.setValue(key + kList, QJsonDocument(list).toJson(QJsonDocument::Compact));
    settings_.setValue(key + kWhen, QDateTime::currentDateTime().toString(Qt::ISODate));
  }
  settings_.sync();
}

QString ChangesPlace::key() const {
  const QByteArray job_path = job.isEmpty() ? QByteArray() : QFileInfo(job).absoluteFilePath().toUtf8();
  const QString side = left ? QStringLiteral("left-") : QString();
  return side + log_sha256 + u'-' +
         QString::fromLatin1(QCryptographicHash::hash(job_path, QCryptographicHash::Sha1).toHex());
}

QDateTime SavedSettings::changedAt(const ChangesPlace& place) const {
  return QDateTime::fromString(settings_.value(kChanges + place.key() + kWhen).toString(), Qt::ISODate);
}

UnsavedWork SavedSettings::changes(const ChangesPlace& place) const {
  UnsavedWork work;
  if (place.log_sha256.isEmpty()) return work;
  const QString key = kChanges + place.key();
  if (const QVariant text = settings_.value(key + kProcedure); text.isValid())
    work.draft = DraftText{text.toByteArray().toStdString(), settings_.value(key + kInAFile).toBool()};
  const QJsonArray list =
      QJsonDocument::fromJson(settings_.value(kChanges + place.key() + kList).toByteArray()).array();
  for (const auto& item : list) {
    JobChange change;
    change.key = item[QStringLiteral("key")].toString().toStdString();
    const QJsonValue value = item[QStringLiteral("value")];
    if (value.isString()) change.value = value.toString().toStdString();
    if (item[QStringLiteral("table")].isString())
      change.table = item[QStringLiteral("table")].toString().toStdString();
    if (item[QStringLiteral("whole")].isString())
      change.whole = item[QStringLiteral("whole")].toString().toStdString();
    if (item[QStringLiteral("list")].isString()) {
      change.added = AddedEntry{item[QStringLiteral("list")].toString().toStdString(), {}};
      for (const QJsonArray keys = item[QStringLiteral("keys")].toArray(); const auto& pair : keys)
        change.added->keys.emplace_back(pair[0].toString().toStdString(), pair[1].toString().toStdString());
    }
    const QJsonArray names = item[QStringLiteral("column")].toArray();
    if (!names.isEmpty()) change.column.emplace();
    for (const auto& name : names) change.column->names.push_back(name.toString().toStdString());
    work.job.push_back(std::move(change));
  }
  return work;
}

Preferences SavedSettings::preferences() const {
  Preferences kept;
  const auto word = [this](const QString& key) { return settings_.value(kPreferences + key).toString(); };
  const QString colours = word(kColours);
  if (colours == kLight) kept.colours = Preferences::Colours::light;
  if (colours == kDark) kept.colours = Preferences::Colours::dark;
  const int percent = settings_.value(kPreferences + kTextSize, kept.text_percent).toInt();
  kept.text_percent = std::clamp(percent, Preferences::kLeastText_percent, Preferences::kMostText_percent);
  const QString unit = word(kUnit);
  if (unit == kCelsius) kept.unit = TemperatureUnit::celsius;
  if (unit == kFahrenheit) kept.unit = TemperatureUnit::fahrenheit;
  const QString time = word(kTime);
  if (time == kRecord) kept.time = TimeOrigin::record;
  if (time == kHold) kept.time = TimeOrigin::hold;
  kept.trusted = word(kTrusted);
  return kept;
}

void SavedSettings::keepPreferences(const Preferences& preferences) {
  const auto keep = [this](const QString& key, const QVariant& value) {
    settings_.setValue(kPreferences + key, value);
  };
  using Colours = Preferences::Colours;
  keep(kColours, preferences.colours == Colours::light  ? kLight
                 : preferences.colours == Colours::dark ? kDark
                                                        : QString());
  keep(kTextSize, preferences.text_percent);
  keep(kUnit, !preferences.unit                                  ? QString()
              : *preferences.unit == TemperatureUnit::fahrenheit ? kFahrenheit
                                                                 : kCelsius);
  keep(kTime, preferences.time == TimeOrigin::record ? kRecord
              : preferences.time == TimeOrigin::hold ? kHold
                                                     : QString());
  keep(kTrusted, preferences.trusted);
  settings_.sync();
}

void SavedSettings::keepLayout(const QString& part, const QByteArray& state) {
  settings_.setValue(QStringLiteral("layout/") + part, state);
}

QByteArray SavedSettings::layout(const QString& part) const {
  return settings_.value(QStringLiteral("layout/") + part).toByteArray();
}

}  // namespace soakwright::gui
