// SPDX-License-Identifier: GPL-3.0-or-later
// Mean rates over a whole ramp, from crossing to crossing.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/holds/stage_time.h"

namespace soakwright {

/// A mean between two instants.
struct MeanRate {
  double rate_c_per_h = 0.0;  ///< positive in the stage's direction
  double from_s = 0.0;
  double to_s = 0.0;
  double hottest_c = 0.0;  ///< of its two ends
};

/// The mean rate of one channel over the ramp: for heat from its last rise through `above` before the
/// continuous hold to its first rise through the hold's `low` after that; for cool from its last fall through
/// `low` to its first fall through `above` after the hold period. The ramp ends at `below` where that is
/// under `low`. Without `above`, and where that crossing belongs to the ramp of another hold, from or to the
/// stage's end. Nullopt if the record does not show both ends.
struct OverallRate {
  std::size_t trace = 0;
  std::optional<MeanRate> mean;
  /// The same between crossings behind which the channel stays, and as far apart as leaving out one reading
  /// beside each makes them: a spike there makes a ramp look shorter than it was.
  std::optional<MeanRate> lasting;
};

/// `brief_s`: a channel that is back after no longer than this did not stay.
std::vector<OverallRate> overall_rates(const TraceSet& set, Group group, const StageTime& when,
                                       const RampStage& stage, double brief_s);

/// No shorter than `in_range_min`, nor than a spike of three readings.
double brief_crossing_s(double in_range_min_s, double interval_s);

/// What readings with the standard deviation `noise_k` may add to a mean rate, in C/h: 4·√2·s/Δt. A mean
/// above the limit by more proves a slope above it.
double overall_noise(const MeanRate& mean, double noise_k);

}  // namespace soakwright
