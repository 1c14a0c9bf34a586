// SPDX-License-Identifier: GPL-3.0-or-later
// `heat.preheat` and `heat.bands` of the result: published figures beside the job's.
#pragma once

#include "core/evaluate/analysis.h"
#include "core/report/json/result_members.h"

namespace soakwright {

/// The job gives a composition, asks for a minimum preheat, or describes a band.
bool has_preheat_or_bands(const Analysis& analysis);

/// Both are null where the job says nothing about them.
void write_preheat(Members& members, const Analysis& analysis);
void write_bands(Members& members, const Analysis& analysis);

}  // namespace soakwright
