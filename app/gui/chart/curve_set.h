// SPDX-License-Identifier: GPL-3.0-or-later
// Rates, spreads and differences prepared for drawing. Made off the GUI thread, shared and never changed
// after.
#pragma once

#include <memory>
#include <vector>

#include "app/gui/chart/trace_pyramid.h"
#include "core/report/chart_curves.h"

namespace soakwright::gui {

/// Keeps the record alive, whose time axis the pyramids look at.
struct CurveSet {
  std::shared_ptr<const Record> record;
  ChartCurves curves;
  WantedCurves has;
  std::vector<TracePyramid> rates;        ///< by channel, as curves.rates
  std::vector<TracePyramid> spreads;      ///< as curves.spreads
  std::vector<TracePyramid> differences;  ///< by channel, as curves.differences
};

/// Long for a large record.
std::shared_ptr<const CurveSet> curve_set(const Analysis& analysis, const WantedCurves& wanted);

}  // namespace soakwright::gui
