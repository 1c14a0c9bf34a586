// SPDX-License-Identifier: GPL-3.0-or-later
// The signs of verdicts and findings, as in the report, in the colours of the window: a shape for each, so
// that colour only repeats what shape and word say.
#pragma once

#include <QIcon>
#include <QString>

#include "app/gui/chart/chart_colours.h"
#include "app/pdf/pages/sign.h"

namespace soakwright::gui {

using pdf::draw_sign;
using pdf::Sign;
using pdf::sign_of;

QColor colour_of(Sign sign, const ChartColours& colours);
/// As an icon of `size` logical pixels, sharp at every screen's scale.
QIcon sign_icon(Sign sign, const ChartColours& colours, int size);

}  // namespace soakwright::gui
