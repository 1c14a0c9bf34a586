// SPDX-License-Identifier: GPL-3.0-or-later
// The axes of a chart on pdf: where ticks stand, what is written beside them, the grid.
#pragma once

#include <QString>
#include <vector>

#include "app/pdf/chart/chart_view.h"
#include "app/pdf/sheet_style.h"

class QPainter;

namespace soakwright::pdf {

struct Tick {
  double at = 0.0;  ///< seconds or C
  QString label;
  QString date;  ///< or "+1 d"; below the label of the first tick and of the first of each day
};

/// At most `most` ticks, at whole minutes, hours or days of the recorder's clock.
std::vector<Tick> time_ticks(const Chart& chart, double from_s, double to_s, int most);
/// At most `most` ticks, at whole numbers of the chart's unit.
std::vector<Tick> temperature_ticks(const Chart& chart, double low_c, double high_c, int most);

/// Room below the labels' top for ticks, times, dates and the axis's name.
double axis_height(const Chart& chart, const Scale& scale, double points);

/// `labels_y`: the top of the time labels.
void paint_grid(QPainter& painter, const ChartMap& map, const Scale& scale, const std::vector<Tick>& times,
                const std::vector<Tick>& temperatures, double labels_y);
void paint_axis_labels(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                       const std::vector<Tick>& times, const std::vector<Tick>& temperatures, double labels_y,
                       double points);

}  // namespace soakwright::pdf
