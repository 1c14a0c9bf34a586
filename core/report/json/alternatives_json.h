// SPDX-License-Identifier: GPL-3.0-or-later
// What verdicts rest on, in the result: other bases of a requirement, and uncertainty budgets.
#pragma once

#include <vector>

#include "core/report/json/result_members.h"

namespace soakwright {

/// `alternatives` of a requirement: null where there is none to show.
void write_alternatives(Members& members, const Alternatives& alternatives);
/// `cycles` of a requirement: null where no previous record counts.
void write_cycles(Members& members, const std::vector<CycleShare>& cycles);
/// `by_excursion_allowed` of a stage: null where it is no hold.
void write_by_excursion_allowed(Members& members, const std::vector<HoldAlternative>& bases);
/// `budget` of the result: empty where the decision is simple.
void write_budgets(Members& members, const std::vector<ChannelBudget>& budgets);

}  // namespace soakwright
