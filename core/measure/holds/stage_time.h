// SPDX-License-Identifier: GPL-3.0-or-later
// When a heat or cool stage is, where its rates are evaluated, and what in it the record cannot show.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/holds/hold_choice.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// Where a stage's rates are evaluated beside its own time: a burner relit in the cooling after the hold, a
/// trip on the way up before it.
struct BesideHold {
  Span time;
  /// No cool stage comes before this one: the time begins with each channel's first rise through `above`.
  bool from_first_rise = false;
};

/// The time of a heat or cool stage, and the holds that bound it (null: the record's start or end).
struct StageTime {
  Span time;
  const HoldCourse* hold_before = nullptr;
  const HoldCourse* hold_after = nullptr;
  /// Where its spread is evaluated: heat up to the start of the next hold period, cool from the end of the
  /// one before.
  Span spread_time;
  /// Heat: after the hold that follows. Cool: before the hold that comes first. Only rates, only in the
  /// stage's direction.
  std::optional<BesideHold> beside_hold;
};

/// Heat: from the end of the hold period before it to the end of the hold period after it. Cool: from the
/// start of the one to the start of the other. Holds without a continuous hold do not bound.
///
/// `stage` is an index into `stages`. The last heat stage before a hold also has the time after that hold's
/// period, up to the next heat stage's time or the record's end; the first cool stage after a hold the time
/// before that hold's period, back to the end of the previous cool stage's time or to the record's start.
StageTime stage_time(const std::vector<HoldCourse>& holds, const std::vector<Stage>& stages,
                     std::size_t stage, RampStage::Direction direction, Span record);

/// Something that could hide a rate or a spread from the record.
struct BlindSpot {
  enum class Reason { starts_above, ends_above, hole };
  Reason reason = Reason::hole;
  std::size_t trace = 0;
  Span time;
  std::optional<double> celsius;  ///< the first or last reading
};

/// A first reading at or above `above` where the stage begins with the record, a last one where it ends with
/// it, and unknown time outside the hold periods that is not known to lie outside above…below. A reading next
/// to time that is excluded to the record's end (from its start) is no last (first) one.
std::vector<BlindSpot> blind_spots(const TraceSet& set, Group group, const std::vector<HoldCourse>& holds,
                                   const StageTime& when, const RampStage& stage);

}  // namespace soakwright
