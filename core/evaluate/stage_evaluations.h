// One function for each kind of stage, and one for the whole record: measures what the limits ask for and
// adds requirements and findings.
#pragma once

#include "core/evaluate/weld_case.h"
#include "core/measure/spread.h"

namespace soakwright {

void evaluate_record_limits(const RecordCase& record_case, const std::vector<std::size_t>& evaluated);
void evaluate_ramp(const WeldCase& weld, const Stage& stage, const RampStage& asked);
void evaluate_hold(const WeldCase& weld, const Stage& stage, const HoldStage& asked, std::size_t hold);
void evaluate_maintain(const WeldCase& weld, const Stage& stage, const MaintainStage& asked);

/// Puts a measured spread into its requirement, and its places among the findings.
void add_spread(const WeldCase& weld, Requirement& requirement, const Spread& spread, bool something_unseen);

}  // namespace soakwright
