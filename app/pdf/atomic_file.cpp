#include "app/pdf/atomic_file.h"

#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

namespace soakwright::pdf {
namespace {

Problem cannot_write(const std::string& path, const QString& why) {
  return {ProblemKind::cannot_write, path, 0, "cannot be written: " + why.toStdString(),
          "name a file in a folder that exists and may be written to"};
}

}  // namespace

std::optional<Problem> write_whole(const QByteArray& bytes, const std::string& path) {
  const QString name = QString::fromStdString(path);
  const QFileInfo info(name);
  if (info.isDir()) return cannot_write(path, QStringLiteral("it is a folder"));
  if (info.exists() && !info.isFile()) {
    QFile device(name);
    if (!device.open(QIODevice::WriteOnly) || device.write(bytes) != bytes.size() || !device.flush())
      return cannot_write(path, device.errorString());
    return std::nullopt;
  }
  QSaveFile file(name);
  if (!file.open(QIODevice::WriteOnly)) return cannot_write(path, file.errorString());
  file.write(bytes);
  if (!file.commit()) return cannot_write(path, file.errorString());
  return std::nullopt;
}

}  // namespace soakwright::pdf
