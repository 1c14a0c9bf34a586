// SPDX-License-Identifier: GPL-3.0-or-later
// `heat` of the result: what the heat did to the metal, with formula, source and flag.
#pragma once

#include "core/evaluate/analysis.h"
#include "core/report/json/result_members.h"

namespace soakwright {

/// Null where nothing was evaluated.
void write_heat(Members& members, const Analysis& analysis);

}  // namespace soakwright
