// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/log_preview.h"

#include <QFile>
#include <QStringDecoder>

namespace soakwright::gui {
namespace {

constexpr qint64 kMostBytes = qint64{64} * 1024;
constexpr int kMostCharacters = 2000;

/// The reader's word for an encoding, however it spells it.
QStringConverter::Encoding encoding_named(const std::string& name) {
  const QString plain = QString::fromStdString(name).toLower().remove(u'-').remove(u' ').remove(u'_');
  if (plain.startsWith(u"utf16be")) return QStringConverter::Utf16BE;
  if (plain.startsWith(u"utf16")) return QStringConverter::Utf16LE;
  if (plain.startsWith(u"utf8") || plain.startsWith(u"ascii")) return QStringConverter::Utf8;
  return QStringConverter::Latin1;
}

/// Control characters would vanish or break the line: their pictures (U+2400 …) stand for them. Tabs stay.
QString visible(QString line) {
  line.truncate(kMostCharacters);
  for (QChar& c : line)
    if (c.unicode() < 0x20 && c != u'\t') c = QChar(0x2400 + c.unicode());
  return line;
}

}  // namespace

LogPreview preview_of(const std::string& path, const std::string& encoding, int most_lines) {
  LogPreview preview;
  QFile file(QFile::decodeName(path.c_str()));
  if (!file.open(QIODevice::ReadOnly)) return preview;
  preview.readable = true;
  const QByteArray bytes = file.read(kMostBytes);
  QStringDecoder decode(encoding_named(encoding));
  QString text = decode(bytes);
  if (text.startsWith(QChar(0xFEFF))) text.remove(0, 1);
  text.replace(QLatin1String("\r\n"), QLatin1String("\n")).replace(u'\r', u'\n');
  QStringList lines = text.split(u'\n');
  const bool cut = !file.atEnd();
  if (cut || (!lines.isEmpty() && lines.last().isEmpty())) lines.removeLast();
  preview.more = cut || lines.size() > most_lines;
  for (qsizetype i = 0; i < lines.size() && i < most_lines; ++i) preview.lines.append(visible(lines[i]));
  return preview;
}

std::string preview_encoding(const std::string& path) {
  QFile file(QFile::decodeName(path.c_str()));
  if (!file.open(QIODevice::ReadOnly)) return "utf-8";
  const QByteArray bytes = file.read(kMostBytes);
  if (bytes.startsWith("\xFF\xFE")) return "utf-16le";
  if (bytes.startsWith("\xFE\xFF")) return "utf-16be";
  QStringDecoder decode(QStringConverter::Utf8, QStringConverter::Flag::Stateless);
  const QByteArray whole_lines = bytes.left(bytes.lastIndexOf('\n') + 1);
  const QString text = decode(whole_lines);
  return text.isNull() || !decode.hasError() ? "utf-8" : "windows-1252";
}

}  // namespace soakwright::gui
