// Draws a chart description with a painter: on a page, into a picture. Lines stay lines and text stays text.
//
// In black and white each trace is known by its dashes and by its number, which stands on the trace and at
// its end; findings by their sign and number; bands and ceilings by the words on them.
#pragma once

#include <QPen>
#include <QRectF>

#include "app/paper/chart_view.h"
#include "app/paper/sheet_style.h"
#include "core/report/report.h"

class QPainter;

namespace soakwright::paper {

/// Plot, axes, lanes, numbers: everything but title and legend.
void paint_chart(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart);

/// Title, chart and legend together.
void paint_chart_sheet(QPainter& painter, const QRectF& area, const Scale& scale, const Report& report);

}  // namespace soakwright::paper
