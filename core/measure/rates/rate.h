// SPDX-License-Identifier: GPL-3.0-or-later
// Actual heating and cooling rates of a stage: the steepest over a sliding fit, its standard error, and
// whether noise or a spike could have made it.
//
// The largest of thousands of noisy slopes lies above the true one. So a window is beyond the limit for
// certain only where slope − 4·SE (− U) is, and still so without any consecutive tenth of its readings.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/guard.h"
#include "core/measure/holds/group_range.h"
#include "core/measure/holds/stage_time.h"
#include "core/measure/rates/rate_jumps.h"
#include "core/measure/rates/rate_parts.h"
#include "core/measure/rates/window_slopes.h"

namespace soakwright {

/// One window of one channel. Rates are positive in the stage's direction.
struct MeasuredRate {
  std::size_t trace = 0;
  WindowSlope window;
  double standard_error = 0.0;  ///< C/h
  double uncertainty = 0.0;     ///< U in C/h; 0 without a guard
  bool beside_hold = false;     ///< after the hold (heat), before the hold (cool)
  /// What the steepest is chosen by.
  [[nodiscard]] double with_uncertainty() const { return window.slope_c_per_h + uncertainty; }
};

/// The steepest over windows of one width.
struct AlternativeRate {
  std::optional<MeasuredRate> worst;  ///< nullopt if none could be measured
  bool surely = false;                ///< some window is beyond the limit for certain
  bool doubtful = false;              ///< some window is not within it (with a guard: by 4·SE and U)
};

/// A time of one channel in which windows are not within the limit.
struct SteepPlace {
  std::size_t trace = 0;
  Span time;
  MeasuredRate steepest;
  std::optional<MeasuredRate> certain;  ///< the steepest window that is beyond the limit for certain
};

struct StageRate {
  double width_s = 0.0;
  bool widened = false;               ///< the window was too narrow for the log's interval
  std::optional<MeasuredRate> worst;  ///< nullopt if nothing could be measured
  bool own_time_measured = false;     ///< some window lies within the stage's own time
  std::vector<SteepPlace> places;     ///< in time order per channel
  /// Traces that ran from `above` to `below`, or back, with no window.
  std::vector<std::size_t> crossed_unseen;
  std::vector<RateJump> jumps;                 ///< in time order per channel
  std::array<AlternativeRate, 4> by_window{};  ///< over exactly 5, 15, 30, 60 min
  /// Per member of the group; nullopt if none could be measured.
  std::vector<std::optional<double>> steepest_c_per_h;
  /// Standard deviation of a reading, per member of the group: its level over all parts, at least q/√12.
  std::vector<double> noise_k;
};

inline constexpr std::array<int, 4> kAlternativeMinutes{5, 15, 30, 60};
/// A slope is beyond the limit for certain when it is so by this many standard errors.
inline constexpr double kSureStandardErrors = 4.0;

/// Whether a is the larger slope, not only by the rounding of two equal ones.
inline bool steeper(double a, double b) {
  constexpr double kRounding = 1e-12;
  return a - b > kRounding * std::max(std::fabs(a), std::fabs(b));
}

/// What a stage's rates are measured by and held to.
struct RateConditions {
  RampStage stage;
  double rate_window_s = 900.0;
  double in_range_min_s = 120.0;
  std::optional<double> limit_c_per_h;  ///< without one no place is steep
  /// With a guard a window is within the limit only where slope + 4·SE + U is.
  const Guard* guard = nullptr;
};

StageRate stage_rate(const Record& record, const RowTicks& rows, const TraceSet& set, Group group,
                     const std::vector<HoldCourse>& holds, const StageTime& when,
                     const RateConditions& conditions);

}  // namespace soakwright
