// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/curve_set.h"

#include <span>

namespace soakwright::gui {

std::shared_ptr<const CurveSet> curve_set(const Analysis& analysis, CurvesOf wanted) {
  auto set = std::make_shared<CurveSet>();
  set->record = analysis.record;
  set->curves = chart_curves(analysis, wanted);
  set->has_rates = wanted == CurvesOf::rates_and_spreads;
  const std::span<const double> times{analysis.record->times_s};
  for (const Readings& rate : set->curves.rates)
    set->rates.push_back(rate.rows() == times.size() ? TracePyramid(times, rate) : TracePyramid());
  for (const SpreadCurve& spread : set->curves.spreads) set->spreads.emplace_back(times, spread.kelvin);
  return set;
}

}  // namespace soakwright::gui
