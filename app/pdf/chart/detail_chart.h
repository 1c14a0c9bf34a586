// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of a chart drawn large: what was measured for one requirement, one hold.
#pragma once

#include <QRectF>

#include "app/pdf/sheet_style.h"
#include "core/report/chart.h"

class QPainter;

namespace soakwright::pdf {

void paint_evidence(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                    const Evidence& evidence);

void paint_hold(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                const ChartRange& range);

}  // namespace soakwright::pdf
