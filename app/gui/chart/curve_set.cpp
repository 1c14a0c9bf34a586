// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/curve_set.h"

#include <span>

namespace soakwright::gui {

std::shared_ptr<const CurveSet> curve_set(const Analysis& analysis, const WantedCurves& wanted) {
  auto set = std::make_shared<CurveSet>();
  set->record = analysis.record;
  set->curves = chart_curves(analysis, wanted);
  set->has = wanted;
  const std::span<const double> times{analysis.record->times_s};
  const auto pyramids = [&](const std::vector<Readings>& curves) {
    std::vector<TracePyramid> made;
    for (const Readings& curve : curves)
      made.push_back(curve.rows() == times.size() ? TracePyramid(times, curve) : TracePyramid());
    return made;
  };
  set->rates = pyramids(set->curves.rates);
  set->differences = pyramids(set->curves.differences);
  for (const SpreadCurve& spread : set->curves.spreads) set->spreads.emplace_back(times, spread.kelvin);
  return set;
}

}  // namespace soakwright::gui
