// SPDX-License-Identifier: GPL-3.0-or-later
// One record laid over another on one time axis.
#pragma once

#include "core/evaluate/analysis.h"

namespace soakwright {

/// What to add to a time of the other record to have it on the time axis of the shown one, and what falls
/// together then.
struct RecordOffset {
  enum class Aligned { required_hold, recorded_hold, record_start };
  double seconds = 0.0;
  Aligned by = Aligned::record_start;
};

/// Both begin their hold together: the first hold of the procedure where the evaluation found it in both;
/// else the longest hold that each record shows by itself; else both records begin together. `record` and
/// `course` of both must be there.
RecordOffset offset_onto(const Analysis& shown, const Analysis& other);

}  // namespace soakwright
