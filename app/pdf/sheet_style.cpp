// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/sheet_style.h"

#include <QFontDatabase>
#include <QRawFont>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>

namespace soakwright::pdf {

QString bound_text(const std::string& utf8) {
  static const QRegularExpression before_unit(
      QStringLiteral("(?<=\\d) (?=(°|h\\b|min\\b|s\\b|mm\\b|m\\b|in\\b|ft\\b|byte))"));
  static const QRegularExpression behind_sign(QStringLiteral("(?<=[≤≥]) "));
  QString result = text(utf8);
  result.replace(before_unit, QString(QChar::Nbsp));
  result.replace(behind_sign, QString(QChar::Nbsp));
  return result;
}

QString bound_sentence(const std::string& utf8) {
  QString result = bound_text(utf8);
  if (!result.isEmpty() && result.at(0).isLower() && !result.startsWith(QLatin1String("stage-")))
    result[0] = result.at(0).toUpper();
  if (!result.isEmpty() && !result.endsWith(QLatin1Char('.'))) result += QLatin1Char('.');
  return result;
}

QFont Scale::font(double points, bool bold) const {
  constexpr double kMillimetresPerPoint = 25.4 / 72.0;
  // A pixel size, because a point size would be scaled once more by the device's own resolution.
  QFont font(QStringLiteral("DejaVu Sans"));
  font.setStyleHint(QFont::SansSerif);
  font.setHintingPreference(QFont::PreferNoHinting);
  font.setPixelSize(std::max(1, static_cast<int>(std::lround(mm(points * kMillimetresPerPoint)))));
  font.setBold(bold);
  // Any spacing at all keeps "fi" two letters: as one sign, a reader who searches for "first" finds nothing.
  constexpr double kLeastSpacing = 1.0 / 64.0;
  font.setLetterSpacing(QFont::AbsoluteSpacing, kLeastSpacing);
  return font;
}

bool usable_font() {
  constexpr double kAnySize = 10.0;
  if (QFontDatabase::families().isEmpty()) return false;
  // What Qt draws boxes with, where it finds nothing, has no table of characters (OpenType, `cmap`).
  return !QRawFont::fromFont(Scale(kAnySize).font(kAnySize)).fontTable("cmap").isEmpty();
}

}  // namespace soakwright::pdf
