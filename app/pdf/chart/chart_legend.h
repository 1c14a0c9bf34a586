// SPDX-License-Identifier: GPL-3.0-or-later
// The legend below a chart: every trace with its dashes, number and name, then the signs and lines.
#pragma once

#include <QRectF>

#include "app/pdf/sheet_style.h"
#include "core/report/chart.h"

class QPainter;

namespace soakwright::pdf {

/// `signs`: with the second part, not the traces alone.
double legend_height(const Chart& chart, const Scale& scale, double width, bool signs);
void paint_legend(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart, bool signs);

}  // namespace soakwright::pdf
