// SPDX-License-Identifier: GPL-3.0-or-later
// What stands behind and beside the traces: ranges of holds, maximum temperatures and other levels, with
// their words.
#pragma once

#include <optional>

#include "app/pdf/chart/chart_view.h"
#include "app/pdf/chart/label_layout.h"
#include "app/pdf/sheet_style.h"

class QPainter;

namespace soakwright::pdf {

/// `filled`: the range's area as well, not its edges alone.
void paint_ranges(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                  bool filled = true);
void paint_levels(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart);
/// After the traces, so that no line runs through a word.
void paint_backdrop_words(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                          LabelLayout& places, double points);
/// Words on white, so that they can be read over lines.
/// Nothing is painted where no place was found for them.
void paint_words(QPainter& painter, const std::optional<QRectF>& place, const QString& words,
                 const QColor& ink);

}  // namespace soakwright::pdf
