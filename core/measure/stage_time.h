// When a heat or cool stage is, and what in it the record cannot show.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/hold_choice.h"

namespace soakwright {

/// The time of a heat or cool stage, and the cored holds beside it (null: the record's start or end).
struct StageTime {
  Span time;
  const HoldCourse* hold_before = nullptr;
  const HoldCourse* hold_after = nullptr;
  /// Where its spread is evaluated: heat up to the next hold's span, cool from the end of the span before.
  Span spread_time;
};

/// Heat: from the end of the span of the last hold before it to the end of the span of the first one after
/// it. Cool: from the start of the one's span to the start of the other's. Holds without a core do not bound.
StageTime stage_time(const std::vector<HoldCourse>& holds, std::size_t stage, RampStage::Direction direction,
                     Span record);

/// Something that could hide a rate or a spread from the record.
struct BlindSpot {
  enum class Reason { starts_above, ends_above, hole };
  Reason reason = Reason::hole;
  std::size_t trace = 0;
  Span time;
  std::optional<double> celsius;  ///< the first or last reading
};

/// A first reading at or above `above` where the stage begins with the record, a last one where it ends with
/// it, and unknown time outside the holds' spans that is not known to lie outside above…below.
std::vector<BlindSpot> blind_spots(const TraceSet& set, Group group, const std::vector<HoldCourse>& holds,
                                   const StageTime& when, const RampStage& stage);

}  // namespace soakwright
