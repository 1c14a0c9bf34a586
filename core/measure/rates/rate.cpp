// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/rate.h"

#include "core/measure/rates/channel_rate.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

constexpr double kFewestIntervals = 8.0;

/// Of equals the first in time, then the first in the log's order.
bool worse(const MeasuredRate& a, const MeasuredRate& b) {
  if (steeper(a.with_uncertainty(), b.with_uncertainty())) return true;
  return !steeper(b.with_uncertainty(), a.with_uncertainty()) && a.window.at_s < b.window.at_s;
}

}  // namespace

StageRate stage_rate(const Record& record, const RowTicks& rows, const TraceSet& set, Group group,
                     const std::vector<HoldCourse>& holds, const StageTime& when,
                     const RateConditions& conditions) {
  StageRate result;
  result.width_s = conditions.rate_window_s;
  if (kFewestIntervals * record.interval_s > conditions.rate_window_s) {
    result.width_s = kFewestIntervals * record.interval_s;
    result.widened = true;
  }
  std::vector<ChannelRate> rates(group.size());
  parallel_for(group.size(), [&](std::size_t member) {
    const std::vector<RatePart> parts =
        rate_parts(set, group, member, holds, when, conditions.stage, conditions.in_range_min_s);
    rates[member] = channel_rate(record, rows, set.traces[group[member]], group[member], parts, conditions,
                                 result.width_s);
  });
  for (std::size_t member = 0; member < group.size(); ++member) {
    const ChannelRate& rate = rates[member];
    if (rate.worst && (!result.worst || worse(*rate.worst, *result.worst))) result.worst = rate.worst;
    result.own_time_measured = result.own_time_measured || rate.own_time_measured;
    result.places.insert(result.places.end(), rate.places.begin(), rate.places.end());
    result.jumps.insert(result.jumps.end(), rate.jumps.begin(), rate.jumps.end());
    if (rate.crossed_unseen) result.crossed_unseen.push_back(group[member]);
    for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i) {
      const AlternativeRate& own = rate.by_window[i];
      AlternativeRate& all = result.by_window[i];
      if (own.worst && (!all.worst || worse(*own.worst, *all.worst))) all.worst = own.worst;
      all.surely = all.surely || own.surely;
      all.doubtful = all.doubtful || own.doubtful;
    }
    result.noise_k.push_back(rate.noise_k);
    result.steepest_c_per_h.push_back(rate.worst ? std::optional{rate.worst->window.slope_c_per_h}
                                                 : std::nullopt);
  }
  return result;
}

}  // namespace soakwright
