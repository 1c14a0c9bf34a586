// What verdicts rest on, in the result: other bases of a requirement, and uncertainty budgets.
#pragma once

#include <vector>

#include "core/report/result_members.h"

namespace soakwright {

/// `basis` of a requirement: null where there is none to show.
void write_basis(Members& members, const Basis& basis);
/// `cycles` of a requirement: null where no earlier record counts.
void write_cycles(Members& members, const std::vector<CycleShare>& cycles);
/// `by_grace` of a stage: null where it is no hold.
void write_by_grace(Members& members, const std::vector<HoldBasis>& bases);
/// `budget` of the result: empty where the decision is simple.
void write_budgets(Members& members, const std::vector<ChannelBudget>& budgets);

}  // namespace soakwright
