// SPDX-License-Identifier: GPL-3.0-or-later
// The signs that carry a verdict without colour: a disc with a tick, a diamond with a stroke, a ring with a
// bar, and for a note a square with a dot.
#pragma once

#include <QColor>
#include <QPointF>

#include "core/evaluate/requirement.h"

class QPainter;

namespace soakwright::pdf {

enum class Sign { met, not_met, inconclusive, note };

Sign sign_of(Verdict verdict);
Sign sign_of(Finding::Kind kind);
QColor colour_of(Sign sign);

/// In the colours of the pdf.
void draw_sign(QPainter& painter, QPointF centre, double radius, Sign sign);
/// In other colours: the window's.
void draw_sign(QPainter& painter, QPointF centre, double radius, Sign sign, const QColor& ink,
               const QColor& pdf);

}  // namespace soakwright::pdf
