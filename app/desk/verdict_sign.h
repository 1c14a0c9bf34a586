// The signs of verdicts and findings, as on paper, in the colours of the window: a shape for each, so that
// colour only repeats what shape and word say.
#pragma once

#include <QIcon>
#include <QString>

#include "app/desk/chart/chart_colours.h"
#include "app/paper/sign.h"

namespace soakwright::desk {

using paper::draw_sign;
using paper::Sign;
using paper::sign_of;

QColor colour_of(Sign sign, const ChartColours& colours);
/// As an icon of `size` logical pixels, sharp at every screen's scale.
QIcon sign_icon(Sign sign, const ChartColours& colours, int size);

}  // namespace soakwright::desk
