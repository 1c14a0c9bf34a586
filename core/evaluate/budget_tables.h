// SPDX-License-Identifier: GPL-3.0-or-later
// The uncertainty budgets as tables: each contribution at the temperatures that limits are at.
#pragma once

#include <vector>

#include "core/evaluate/verdict.h"
#include "core/measure/guard.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// One for each channel on the work.
std::vector<ChannelBudget> budget_tables(const Record& record, const Procedure& procedure,
                                         const Guard& guard);

}  // namespace soakwright
