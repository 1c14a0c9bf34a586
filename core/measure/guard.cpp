// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/guard.h"

#include <cmath>

namespace soakwright {
namespace {

/// U grows by less than a hundredth of a kelvin for each kelvin: a few rounds are exact to 1e-9.
constexpr int kRounds = 6;

double settle(const Budget& budget, double level_c, double sign) {
  double reading = level_c;
  for (int i = 0; i < kRounds; ++i) {
    const double u = budget.expanded_k(reading);
    if (!std::isfinite(u)) return level_c + sign * u;
    reading = level_c + sign * u;
  }
  return reading;
}

double moved_by(const Budget& budget, double edge_c, double sign) {
  return std::isinf(edge_c) ? edge_c : edge_c + sign * budget.expanded_k(edge_c);
}

}  // namespace

SourceRanges Guard::moved(const Trace& trace, TemperatureRange range, RangeEdge edge) const {
  if (edge == RangeEdge::as_asked) return {range};
  const double inwards = edge == RangeEdge::narrowed ? 1.0 : -1.0;
  SourceRanges ranges;
  for (std::size_t source = 0; source < trace.sources.size(); ++source) {
    const Budget& budget = of(trace, source);
    ranges.push_back({moved_by(budget, range.low_c, inwards), moved_by(budget, range.high_c, -inwards)});
  }
  return ranges;
}

double Guard::surely_below(const Trace& trace, std::size_t source, double level_c) const {
  return settle(of(trace, source), level_c, -1.0);
}

double pair_uncertainty_k(double first_k, double second_k) { return std::hypot(first_k, second_k); }

}  // namespace soakwright
