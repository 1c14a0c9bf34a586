#include "app/desk/desk_memory.h"

#include <QFileInfo>

namespace soakwright::desk {
namespace {

constexpr int kMostRecent = 12;
const QString kRecent = QStringLiteral("files/recent");
const QString kLast = QStringLiteral("files/last");

}  // namespace

DeskMemory::DeskMemory() : settings_(QStringLiteral("Soakwright"), QStringLiteral("desk")) {}

DeskMemory::DeskMemory(const QString& file) : settings_(file, QSettings::IniFormat) {}

QStringList DeskMemory::recent() const { return settings_.value(kRecent).toStringList(); }

QStringList DeskMemory::last() const { return settings_.value(kLast).toStringList(); }

void DeskMemory::remember(const OpenFiles& files) {
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

void DeskMemory::keepLayout(const QString& part, const QByteArray& state) {
  settings_.setValue(QStringLiteral("layout/") + part, state);
}

QByteArray DeskMemory::layout(const QString& part) const {
  return settings_.value(QStringLiteral("layout/") + part).toByteArray();
}

}  // namespace soakwright::desk
