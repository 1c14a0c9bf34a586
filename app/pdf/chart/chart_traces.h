// SPDX-License-Identifier: GPL-3.0-or-later
// The traces themselves, and the numbers by which they are told apart without colour.
#pragma once

#include <QPen>
#include <vector>

#include "app/pdf/chart/chart_view.h"
#include "app/pdf/chart/label_layout.h"
#include "app/pdf/chart/trace_thinning.h"
#include "app/pdf/sheet_style.h"

class QPainter;

namespace soakwright::pdf {

/// A trace as drawn in one window.
struct DrawnTrace {
  std::size_t trace = 0;
  std::vector<TracePiece> pieces;
  QPen pen;
};

/// `which`: the traces wanted, by index; those that are not drawn at all are left out.
std::vector<DrawnTrace> draw_ready(const Chart& chart, const std::vector<std::size_t>& which,
                                   const ChartMap& map, const Scale& scale);
void paint_traces(QPainter& painter, const ChartMap& map, const Scale& scale,
                  const std::vector<DrawnTrace>& traces);

/// Each trace's number beside the plot, at the level at which it ends; room for it is kNumberColumn_mm.
inline constexpr double kNumberColumn_mm = 8.0;
void paint_end_numbers(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                       const std::vector<DrawnTrace>& traces, LabelLayout& places);
/// And on the trace itself, where it lies freest of the others.
void paint_numbers_on_traces(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                             const std::vector<DrawnTrace>& traces, LabelLayout& places);
struct NumberColours {
  QColor ground = colour::kPdf, ink = colour::kInk;
};
/// The same sign as in the legend; `box` is filled by number_box().
void paint_number(QPainter& painter, const QRectF& box, const Scale& scale, const QString& number,
                  const QPen& pen, const NumberColours& colours = {});
QRectF number_box(const Scale& scale, const QString& number);

}  // namespace soakwright::pdf
