// SPDX-License-Identifier: GPL-3.0-or-later
// Where a stage's rates are evaluated on one channel.
//
// A part is a longest known time of the stage in which the channel lies between `above` and `below`, and, in
// a hold period, outside that hold's range: control within the range is no ramp. Two parts no further apart
// than `in_range_min`, with nothing unknown between them, are one, the samples between included: noise about
// a limit makes no parts of its own.
#pragma once

#include <cstddef>
#include <vector>

#include "core/measure/holds/stage_time.h"

namespace soakwright {

struct RatePart {
  /// What the channel does at an end of the part: it crosses a limit of the stage, or neither.
  enum class End { above, below, other };

  Span time;
  std::size_t piece = 0;           ///< of the trace
  std::size_t first = 0, end = 0;  ///< samples of the piece's source
  End starts_at = End::other, ends_at = End::other;
  bool beside_hold = false;  ///< after the hold (heat), before the hold (cool)

  /// Runs from `above` to `below` or back.
  [[nodiscard]] bool crosses_all() const {
    return starts_at != End::other && ends_at != End::other && starts_at != ends_at;
  }
};

/// The parts of the group's `member`, in time order.
std::vector<RatePart> rate_parts(const TraceSet& set, Group group, std::size_t member,
                                 const std::vector<HoldCourse>& holds, const StageTime& when,
                                 const RampStage& stage, double in_range_min_s);

}  // namespace soakwright
