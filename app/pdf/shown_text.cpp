// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/shown_text.h"

#include <utility>

#include "core/units/printable_text.h"

namespace soakwright::pdf {
namespace {

constexpr QChar kFirstStrongIsolate(0x2068);
constexpr QChar kPopIsolate(0x2069);
constexpr char16_t kFirstRightToLeft = 0x0590;  // Hebrew begins the blocks that are written so

enum class Way { left_to_right, right_to_left, either };

Way way_of(char32_t code_point) {
  switch (QChar::direction(code_point)) {
    case QChar::DirR:
    case QChar::DirAL:
      return Way::right_to_left;
    case QChar::DirL:
      return Way::left_to_right;
    default:
      return Way::either;
  }
}

/// Units (one or two) of the code point at `i`.
qsizetype units_at(const QString& text, qsizetype i) {
  return text[i].isHighSurrogate() && i + 1 < text.size() && text[i + 1].isLowSurrogate() ? 2 : 1;
}

char32_t code_point_at(const QString& text, qsizetype i) {
  return units_at(text, i) == 2 ? QChar::surrogateToUcs4(text[i], text[i + 1]) : text[i].unicode();
}

/// The end of the run that begins at `from`: behind the last character from right to left before one from
/// left to right.
qsizetype run_end(const QString& text, qsizetype from) {
  qsizetype end = from;
  for (qsizetype i = from; i < text.size(); i += units_at(text, i)) {
    const Way way = way_of(code_point_at(text, i));
    if (way == Way::left_to_right) break;
    if (way == Way::right_to_left) end = i + units_at(text, i);
  }
  return end;
}

}  // namespace

QString shown_text(const std::string& utf8) {
  QString text = QString::fromStdString(printable(utf8));
  bool any = false;
  for (const QChar c : std::as_const(text)) any = any || c.unicode() >= kFirstRightToLeft;
  if (!any) return text;
  QString isolated;
  for (qsizetype i = 0; i < text.size();) {
    if (way_of(code_point_at(text, i)) != Way::right_to_left) {
      const qsizetype units = units_at(text, i);
      isolated += QStringView(text).mid(i, units);
      i += units;
      continue;
    }
    const qsizetype end = run_end(text, i);
    isolated += kFirstStrongIsolate;
    isolated += QStringView(text).mid(i, end - i);
    isolated += kPopIsolate;
    i = end;
  }
  return isolated;
}

}  // namespace soakwright::pdf
