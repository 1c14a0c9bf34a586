// SPDX-License-Identifier: GPL-3.0-or-later
// What every text of a report is made from: the analysis, and how this report prints numbers.
#pragma once

#include "core/evaluate/analysis.h"
#include "core/wording/printed_numbers.h"

namespace soakwright {

struct WordingContext {
  const Analysis& analysis;
  const PrintedNumbers& say;
};

}  // namespace soakwright
