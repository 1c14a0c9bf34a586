#include "core/explain/hold_drift.h"

#include <algorithm>

namespace soakwright {
namespace {

HoldDrift from_moment(double at_s, double end_s, double begin_s, bool broke_off) {
  const double at = std::max(at_s, begin_s);
  return {at, broke_off, end_s - at};
}

std::optional<HoldDrift> continuous_drift(const std::vector<Span>& stretches, double wanted_s,
                                          double begin_s) {
  const double end = stretches.back().second;
  const double last_start = end - wanted_s;
  for (const Span& stretch : stretches) {
    if (stretch.second - stretch.first >= wanted_s) return std::nullopt;
    // The one that runs at the last moment to start breaks off later: until then it could have gone on.
    if (stretch.first <= last_start && last_start < stretch.second)
      return from_moment(stretch.second, end, begin_s, true);
  }
  return from_moment(last_start, end, begin_s, false);
}

std::optional<HoldDrift> accumulated_drift(const std::vector<Span>& stretches, double wanted_s,
                                           double begin_s) {
  const double end = stretches.back().second;
  double spare = end - stretches.front().first - wanted_s;  // time that may be lost between the stretches
  if (spare < 0.0) return from_moment(stretches.front().first + spare, end, begin_s, false);
  for (std::size_t i = 1; i < stretches.size(); ++i) {
    const double lost = stretches[i].first - stretches[i - 1].second;
    if (lost > spare) return from_moment(stretches[i - 1].second + spare, end, begin_s, spare == 0.0);
    spare -= lost;
  }
  return std::nullopt;
}

}  // namespace

std::optional<HoldDrift> hold_drift(const std::vector<Span>& stretches, double wanted_s,
                                    HoldStage::Count count, double begin_s) {
  if (stretches.empty()) return std::nullopt;
  return count == HoldStage::Count::continuous ? continuous_drift(stretches, wanted_s, begin_s)
                                               : accumulated_drift(stretches, wanted_s, begin_s);
}

}  // namespace soakwright
