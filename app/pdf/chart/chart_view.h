// SPDX-License-Identifier: GPL-3.0-or-later
// The part of a chart that is drawn, and where on the sheet each of its moments and temperatures falls.
#pragma once

#include <QRectF>

#include "core/report/chart.h"

namespace soakwright::pdf {

struct ChartWindow {
  double from_s = 0.0, to_s = 1.0;
  double low_c = 0.0, high_c = 1.0;
};

/// Everything: the whole record, every trace that is drawn, every range and temperature_max.
ChartWindow whole_window(const Chart& chart);
/// What was measured for one requirement, with some room around it.
ChartWindow window_around(const Chart& chart, const Evidence& evidence);

/// A hold with what leads to it and away from it, so large that its traces part.
ChartWindow window_of_hold(const Chart& chart, const ChartRange& range);

/// Traces that the job put out of use are not drawn.
bool is_drawn(const ChartTrace& trace);

/// Evaluated and spare traces of the range's weld.
bool is_of_hold(const Chart& chart, const ChartTrace& trace, const ChartRange& range);

class ChartMap {
 public:
  ChartMap(const QRectF& plot, const ChartWindow& window);
  [[nodiscard]] const QRectF& plot() const { return plot_; }
  [[nodiscard]] const ChartWindow& window() const { return window_; }
  [[nodiscard]] double x(double at_s) const { return plot_.left() + (at_s - window_.from_s) * per_second_; }
  [[nodiscard]] double y(double celsius) const {
    return plot_.bottom() - (celsius - window_.low_c) * per_kelvin_;
  }
  [[nodiscard]] QPointF at(double at_s, double celsius) const { return {x(at_s), y(celsius)}; }
  /// A moment's place, kept within the plot.
  [[nodiscard]] double x_within(double at_s) const;
  [[nodiscard]] double seconds_per_pixel() const { return 1.0 / per_second_; }
  [[nodiscard]] double kelvin_per_pixel() const { return 1.0 / per_kelvin_; }
  [[nodiscard]] bool shows(double from_s, double to_s) const {
    return to_s >= window_.from_s && from_s <= window_.to_s;
  }

 private:
  QRectF plot_;
  ChartWindow window_;
  double per_second_, per_kelvin_;
};

}  // namespace soakwright::pdf
