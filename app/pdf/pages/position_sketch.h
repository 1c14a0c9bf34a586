// SPDX-License-Identifier: GPL-3.0-or-later
// Where the thermocouples sat: around the work, seen along its axis, and along it.
#pragma once

#include <QRectF>

#include "app/pdf/sheet_style.h"
#include "core/report/chart.h"

class QPainter;

namespace soakwright::pdf {

/// Some thermocouple in use has an angle, or they sit at more than one place along the work.
bool has_sketch(const Chart& chart);

void paint_sketch(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart);

}  // namespace soakwright::pdf
