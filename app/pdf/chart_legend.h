// SPDX-License-Identifier: GPL-3.0-or-later
// The legend below a chart: every trace with its dashes, number and name, then the signs and lines.
#pragma once

#include <QRectF>

#include "app/pdf/sheet_style.h"
#include "core/report/chart.h"

class QPainter;

namespace soakwright::pdf {

double legend_height(const Chart& chart, const Scale& scale, double width);
void paint_legend(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart);

}  // namespace soakwright::pdf
