// SPDX-License-Identifier: GPL-3.0-or-later
// The rates of one channel in a stage: the windows of each part, held to the limit.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/rates/rate.h"

namespace soakwright {

struct ChannelRate {
  std::optional<MeasuredRate> worst;
  bool own_time_measured = false;
  std::vector<SteepPlace> places;
  std::array<AlternativeRate, 4> by_window{};
  bool crossed_unseen = false;
  std::vector<RateJump> jumps;
  double noise_k = 0.0;
};

/// `parts` are those of the trace `index`; `width_s` is the width of a window.
ChannelRate channel_rate(const Record& record, const RowTicks& rows, const Trace& trace, std::size_t index,
                         const std::vector<RatePart>& parts, const RateConditions& conditions,
                         double width_s);

}  // namespace soakwright
