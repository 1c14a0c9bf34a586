// Actual heating and cooling rates of a stage: the worst over a sliding fit, its standard error, and whether
// noise alone could have made it (contract, "Rate").
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/group_range.h"
#include "core/measure/guard.h"
#include "core/measure/stage_time.h"
#include "core/measure/window_slopes.h"

namespace soakwright {

/// One window of one channel. Rates are positive in the stage's direction.
struct MeasuredRate {
  std::size_t trace = 0;
  WindowSlope window;
  double standard_error = 0.0;  ///< C/h
  double uncertainty = 0.0;     ///< U in C/h; 0 without a guard
  /// What is held against the limit: the slope, guarded with 4 standard errors and U added.
  double held = 0.0;
};

/// The worst over windows of one width.
struct AlternativeRate {
  std::optional<MeasuredRate> worst;  ///< nothing where none could be measured
  bool surely = false;                ///< some window is beyond the limit by more than noise (and U)
  bool doubtful = false;              ///< some window is beyond it at all
};

/// A time of one channel in which windows are steeper than the limit; `surely` where that is more than noise.
struct SteepPlace {
  std::size_t trace = 0;
  Span time;
  MeasuredRate steepest;
  bool surely = false;
};

struct StageRate {
  double width_s = 0.0;
  bool widened = false;               ///< the window was too narrow for the log's interval
  std::optional<MeasuredRate> worst;  ///< nothing where nothing could be measured
  std::vector<SteepPlace> places;     ///< in time order per channel
  std::vector<std::size_t>
      crossed_unseen;  ///< traces that ran from `above` to `below`, or back, with no window
  std::array<AlternativeRate, 4> by_window{};           ///< over exactly 5, 15, 30, 60 min
  std::vector<std::pair<std::size_t, double>> noise_k;  ///< per trace, standard deviation of a reading
};

inline constexpr std::array<int, 4> kAlternativeMinutes{5, 15, 30, 60};
/// A slope is beyond the limit for certain when it is so by this many standard errors.
inline constexpr double kSureStandardErrors = 4.0;

/// `limit` in C/h decides what is a steep place; without one there are none. With a guard a window is within
/// it only where slope + 4·SE + U is, and beyond it for certain where slope − 4·SE − U is.
StageRate stage_rate(const Record& record, const RowTicks& rows, const TraceSet& set, Group group,
                     const StageTime& when, const RampStage& stage, double rate_window_s,
                     std::optional<double> limit_c_per_h, const Guard* guard = nullptr);

/// The mean rate of one channel over the ramp: for heat from its last rise through `above` before the hold's
/// core to its first rise through the hold's `low` after that; for cool from its last fall through `low` to
/// its first fall through `above` after the span. Without `above`, from or to the stage's end. Positive in
/// the stage's direction.
struct OverallRate {
  std::size_t trace = 0;
  std::optional<double> rate_c_per_h;
  double from_s = 0.0;
  double to_s = 0.0;
};
std::vector<OverallRate> overall_rates(const TraceSet& set, Group group, const StageTime& when,
                                       const RampStage& stage);

}  // namespace soakwright
