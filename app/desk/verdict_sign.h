// The signs of verdicts and findings: a shape for each, so that colour only repeats what shape and word say.
//
// The same as on paper. met: disc with a tick; not met: diamond with a stroke; undecided: ring with a bar; note:
// square with a dot.
#pragma once

#include <QIcon>
#include <QString>

#include "app/desk/chart/chart_colours.h"
#include "core/judge/requirement.h"

class QPainter;
class QPointF;

namespace soakwright::desk {

enum class Sign { met, not_met, undecided, note };

Sign sign_of(Verdict verdict);
Sign sign_of(Finding::Kind kind);
QColor colour_of(Sign sign, const ChartColours& colours);

void draw_sign(QPainter& painter, const QPointF& centre, double radius, Sign sign, const QColor& colour,
               const QColor& paper);
/// As an icon of `size` logical pixels, sharp at every screen's scale.
QIcon sign_icon(Sign sign, const ChartColours& colours, int size);

}  // namespace soakwright::desk
