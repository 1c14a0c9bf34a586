// SPDX-License-Identifier: GPL-3.0-or-later
// What tests of a hold's requirements share: a log of minutes, and a run that dips out of its range.
#pragma once

#include "tests/core/evaluate/evaluated.h"

namespace soakwright {

inline const char* const kLinesOfAMinute = "[evaluation]\ninterpolate_max = \"60 s\"\n";

/// Out of the range 500 to 600 from 83 to 85 min (4,980 s to 5,100 s), 20 K deep: in from 3,200 s and to
/// 7,600 s.
inline MadeRecord dipping() {
  return MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {84, 480}, {88, 560}, {120, 560}, {180, 20}});
}

}  // namespace soakwright
