// What stands behind and beside the traces: bands of holds, ceilings and other levels, with their words.
#pragma once

#include "app/paper/chart_view.h"
#include "app/paper/label_places.h"
#include "app/paper/sheet_style.h"

class QPainter;

namespace soakwright::paper {

/// `filled`: the band's area as well, not its edges alone.
void paint_bands(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                 bool filled = true);
void paint_levels(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart);
/// After the traces, so that no line runs through a word.
void paint_backdrop_words(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                          LabelPlaces& places, double points);
/// Words on white, so that they can be read over lines.
void paint_words(QPainter& painter, const QRectF& box, const QString& words, const QColor& ink);

}  // namespace soakwright::paper
