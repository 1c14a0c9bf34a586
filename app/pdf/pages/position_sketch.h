// SPDX-License-Identifier: GPL-3.0-or-later
// Where the thermocouples sat: around the work, seen along its axis, and along it.
#pragma once

#include <QColor>
#include <QPen>
#include <QRectF>
#include <vector>

#include "app/pdf/sheet_style.h"
#include "core/procedure/job/job.h"
#include "core/report/chart.h"

class QPainter;

namespace soakwright::pdf {

/// Some thermocouple in use has an angle, or they sit at more than one place along the work.
bool has_sketch(const Chart& chart);

/// The traces whose thermocouples are drawn, by index.
std::vector<std::size_t> traces_on_sketch(const Chart& chart);

/// What the sketch is drawn with where it is not on paper.
struct SketchLook {
  QColor ground = colour::kPdf, ink = colour::kInk, faint_ink = colour::kFaintInk, grid = colour::kGrid;
  std::vector<BandEntry> bands = {};  ///< drawn along the work, where positions are
  std::vector<QPen> pens = {};        ///< one for each trace
  double around_mm = 12.0;            ///< outside the circle: room for two numbers, one above the other
};

/// As on paper.
void paint_sketch(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart);
void paint_sketch(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                  const SketchLook& look);

}  // namespace soakwright::pdf
