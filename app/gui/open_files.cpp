// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/open_files.h"

#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>

namespace soakwright::gui {

FileKind file_kind(const QString& path) {
  QFile file(path);
  // Opening a pipe would wait for somebody who writes to it.
  if (!QFileInfo(path).isFile() || !file.open(QIODevice::ReadOnly))
    return path.endsWith(u".toml") ? FileKind::procedure : FileKind::log;
  const QByteArray begin = file.read(qint64{16} * 1024);
  if (begin.startsWith("%PDF-")) return FileKind::report;
  const QString head = QString::fromUtf8(begin);
  static const QRegularExpression says(
      QStringLiteral("^\\s*soakwright\\s*=\\s*[\"'](procedure|job|review)\\b"),
      QRegularExpression::MultilineOption);
  const QRegularExpressionMatch match = says.match(head);
  if (match.hasMatch()) {
    if (match.captured(1) == u"job") return FileKind::job;
    if (match.captured(1) == u"review") return FileKind::review;
    return FileKind::procedure;
  }
  // A TOML file without the line is refused by the procedure's reader, which says what is missing.
  return path.endsWith(u".toml", Qt::CaseInsensitive) ? FileKind::procedure : FileKind::log;
}

}  // namespace soakwright::gui
