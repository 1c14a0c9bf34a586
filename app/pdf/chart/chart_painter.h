// SPDX-License-Identifier: GPL-3.0-or-later
// Draws a chart description with a painter: on a page, into a picture. Lines stay lines and text stays text.
//
// In black and white each trace is known by its dashes and by its number, which stands on the trace and at
// its end; findings by their sign and number; ranges and maximum temperatures by the words on them.
#pragma once

#include <QPen>
#include <QRectF>

#include "app/pdf/chart/chart_view.h"
#include "app/pdf/sheet_style.h"
#include "core/report/report.h"

class QPainter;

namespace soakwright::pdf {

/// Plot, axes, lanes, numbers: everything but title and legend.
void paint_chart(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart);

/// `signs`: the legend explains signs and lines too, not the traces alone.
void paint_chart_with_legend(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                             bool signs = true);

/// Title, `said` below it, chart and legend together.
void paint_chart_sheet(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                       const QString& said);

}  // namespace soakwright::pdf
