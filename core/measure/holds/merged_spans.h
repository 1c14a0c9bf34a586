// SPDX-License-Identifier: GPL-3.0-or-later
// Times of one kind in order, joined where they overlap, and whether something lies in one of them.
#pragma once

#include <algorithm>
#include <vector>

#include "core/measure/traces/trace.h"

namespace soakwright {

/// Joined where they overlap, in time order.
inline std::vector<Span> merged(std::vector<Span> spans) {
  std::sort(spans.begin(), spans.end());
  std::vector<Span> joined;
  for (const Span& span : spans) {
    if (!joined.empty() && span.first <= joined.back().second)
      joined.back().second = std::max(joined.back().second, span.second);
    else
      joined.push_back(span);
  }
  return joined;
}

/// The first of the times (merged) that ends at or after `t`.
inline std::vector<Span>::const_iterator first_ending_from(const std::vector<Span>& times, double t) {
  return std::lower_bound(times.begin(), times.end(), t,
                          [](const Span& time, double at) { return time.second < at; });
}

/// Whether a sample at `t` belongs to one of the times (merged).
inline bool any_at(const std::vector<Span>& times, double t) {
  const auto time = first_ending_from(times, t - kSampleSlack_s);
  return time != times.end() && time->first <= t + kSampleSlack_s;
}

/// Whether one of the times (merged) has an instant between two samples.
inline bool any_between(const std::vector<Span>& times, double from, double to) {
  const auto time = first_ending_from(times, from);
  return time != times.end() && time->first < to;
}

}  // namespace soakwright
