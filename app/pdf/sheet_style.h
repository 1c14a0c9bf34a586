// SPDX-License-Identifier: GPL-3.0-or-later
// Measures, fonts and colours of everything that is put on pdf or into a picture.
//
// Colours are opaque (PDF/A-1 knows no transparency) and only repeat what a shape, a dash or a word already
// says.
#pragma once

#include <QColor>
#include <QFont>
#include <QString>
#include <string>

#include "app/pdf/shown_text.h"

namespace soakwright::pdf {

inline QString text(const std::string& utf8) { return shown_text(utf8); }
/// The same with every number bound to the unit and the sign beside it, so that no line ends between them.
QString bound_text(const std::string& utf8);

/// A sentence of its own: the core's begin small where they can be part of longer ones.
QString bound_sentence(const std::string& utf8);

/// Text of paragraphs and tables; nothing that a reader must read is smaller.
inline constexpr double kBodyPoints = 8.0;
/// Words and numbers on charts.
inline constexpr double kChartPoints = 7.0;

namespace colour {
inline const QColor kInk{0x15, 0x1c, 0x24};
inline const QColor kFaintInk{0x52, 0x5c, 0x66};
inline const QColor kPdf{Qt::white};
inline const QColor kRule{0xb4, 0xbc, 0xc4};
inline const QColor kHeadRow{0xe9, 0xed, 0xf0};
inline const QColor kTitle{0x1f, 0x3a, 0x4d};
inline const QColor kGrid{0xe2, 0xe5, 0xe8};
inline const QColor kMet{0x1c, 0x6b, 0x41};
inline const QColor kNotMet{0xa0, 0x1f, 0x18};
inline const QColor kInconclusive{0x80, 0x53, 0x00};
inline const QColor kNote{0x3a, 0x55, 0x6e};
inline const QColor kRange{0xe4, 0xf1, 0xea};
inline const QColor kRangeEdge{0x3c, 0x8f, 0x6d};
inline const QColor kStamp{0xf4, 0xe6, 0xe4};
inline const QColor kEvidence{0xf8, 0xec, 0xcd};
}  // namespace colour

/// How many device pixels a millimetre has, and fonts in points at that scale.
class Scale {
 public:
  explicit Scale(double pixels_per_mm) : pixels_per_mm_(pixels_per_mm) {}
  [[nodiscard]] double mm(double millimetres) const { return millimetres * pixels_per_mm_; }
  [[nodiscard]] QFont font(double points, bool bold = false) const;

 private:
  double pixels_per_mm_;
};

/// Whether letters can be drawn at all: a font is installed, can be read and has outlines. Without one every
/// letter would be a black box.
bool usable_font();

}  // namespace soakwright::pdf
