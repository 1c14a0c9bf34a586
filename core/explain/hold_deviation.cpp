// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/hold_deviation.h"

#include <algorithm>

namespace soakwright {
namespace {

HoldDeviation from_moment(double at_s, double end_s, double begin_s, std::optional<std::size_t> broke_off) {
  const double at = std::max(at_s, begin_s);
  return {at, broke_off, end_s - at};
}

std::optional<HoldDeviation> continuous_deviation(const std::vector<Span>& in_range, double wanted_s,
                                                  double begin_s) {
  const double end = in_range.back().second;
  const double last_start = end - wanted_s;
  for (std::size_t i = 0; i < in_range.size(); ++i) {
    const Span& time_range = in_range[i];
    if (time_range.second - time_range.first >= wanted_s) return std::nullopt;
    // The one that runs at the last moment to start breaks off later: until then it could have gone on.
    if (time_range.first <= last_start && last_start < time_range.second)
      return from_moment(time_range.second, end, begin_s, i);
  }
  return from_moment(last_start, end, begin_s, std::nullopt);
}

std::optional<HoldDeviation> accumulated_deviation(const std::vector<Span>& in_range, double wanted_s,
                                                   double begin_s) {
  const double end = in_range.back().second;
  double spare = end - in_range.front().first - wanted_s;  // time that may be lost between the times in range
  if (spare < 0.0) return from_moment(in_range.front().first + spare, end, begin_s, std::nullopt);
  for (std::size_t i = 1; i < in_range.size(); ++i) {
    const double lost = in_range[i].first - in_range[i - 1].second;
    if (lost > spare)
      return from_moment(in_range[i - 1].second + spare, end, begin_s,
                         spare == 0.0 ? std::optional{i - 1} : std::nullopt);
    spare -= lost;
  }
  return std::nullopt;
}

}  // namespace

std::optional<HoldDeviation> hold_deviation(const std::vector<Span>& in_range, double wanted_s,
                                            HoldStage::Count count, double begin_s) {
  if (in_range.empty()) return std::nullopt;
  return count == HoldStage::Count::continuous ? continuous_deviation(in_range, wanted_s, begin_s)
                                               : accumulated_deviation(in_range, wanted_s, begin_s);
}

}  // namespace soakwright
