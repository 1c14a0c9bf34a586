// SPDX-License-Identifier: GPL-3.0-or-later
// One part's windows: how their slopes stand against the limit once noise, U and single readings are counted.
#pragma once

#include <cstddef>
#include <optional>
#include <utility>

#include "core/measure/rates/left_out_tenth.h"
#include "core/measure/rates/rate.h"

namespace soakwright {

/// A window of a part. `sample` is its middle; of a part that is one window there is none.
struct FoundWindow {
  double slope_c_per_h = 0.0;  ///< in the stage's direction
  std::optional<std::size_t> sample;
  WindowShape shape;
};

class PartWindows {
 public:
  /// `channel_level_k2` is the level of the readings' noise over all parts of the channel, `edge_c_per_h` the
  /// limit with its slack, `rate_share` U of a rate as a share of it.
  PartWindows(const Trace& trace, std::size_t index, const RatePart& part, const IntegerSamples& samples,
              double sign, double edge_c_per_h, double channel_level_k2, double last_digit_k, bool guarded,
              double rate_share);

  /// Calls visit(FoundWindow) for each window of the width in time order; returns whether there is any. One
  /// may be left out where its slope is not above what of_interest_above(WindowShape) says.
  template <typename Interest, typename Visit>
  bool visit(double width_s, Interest&& of_interest_above, Visit&& visit) const {
    return visit_windows(
        source_, samples_, part_.first, part_.end, part_.time, width_s, sign_,
        [&](const WindowShape& shape) {
          const double above = of_interest_above(shape);
          return part_.beside_hold && above < 0.0 ? 0.0 : above;
        },
        [&](std::size_t sample, double slope, const WindowShape& shape) {
          if (!part_.beside_hold || slope > 0.0) visit(FoundWindow{slope, sample, shape});
        });
  }
  /// The whole part as one window, if it is long enough.
  [[nodiscard]] std::optional<FoundWindow> whole(double in_range_min_s) const;

  /// Slope and U: what the steepest is chosen by, and the slope that any window with more must exceed.
  [[nodiscard]] double with_uncertainty(double slope) const;
  [[nodiscard]] double slope_with(double with_uncertainty) const;

  /// Whether the window is not within the limit; guarded, by 4·SE and U.
  [[nodiscard]] bool is_open(const FoundWindow& window, double width_s);
  /// No window of this shape with a lower slope is open.
  [[nodiscard]] double open_above(const WindowShape& shape);
  /// Beyond the limit for certain by the channel's noise alone: no other window need be looked at more
  /// closely.
  [[nodiscard]] bool is_candidate(const FoundWindow& window);
  [[nodiscard]] double candidate_above(const WindowShape& shape);
  /// No window of any shape with a lower slope is one.
  [[nodiscard]] double candidate_of_any_shape_above() const;

  [[nodiscard]] MeasuredRate measured(const FoundWindow& window, double width_s) const;
  /// Beyond the limit for certain; `tenth` covers the window's samples.
  [[nodiscard]] bool is_certain(const FoundWindow& window, double width_s, LeftOutTenth& tenth) const;

  /// The samples of a window.
  [[nodiscard]] std::pair<std::size_t, std::size_t> samples_of(const FoundWindow& window,
                                                               double width_s) const;
  [[nodiscard]] const RatePart& part() const { return part_; }
  [[nodiscard]] const IntegerSamples& samples() const { return samples_; }
  [[nodiscard]] double middle_s(const FoundWindow& window) const;

 private:
  /// The standard deviation of a reading in the window.
  [[nodiscard]] double noise_of(const FoundWindow& window, double width_s) const;
  [[nodiscard]] double standard_error(double noise_k, const WindowShape& shape) const;

  /// The standard error by the channel's noise; most windows have the shape of the one before.
  [[nodiscard]] double channel_error(const WindowShape& shape);

  const TraceSource& source_;
  std::size_t index_;
  const RatePart& part_;
  const IntegerSamples& samples_;
  double sign_;
  double edge_;
  double channel_noise_k_;  ///< at least q/√12
  double noise_bound_k_;    ///< guarded: of any window of the part
  bool guarded_;
  double rate_share_;
  WindowShape shape_;  ///< of channel_error_
  double channel_error_ = 0.0;
};

}  // namespace soakwright
