// One function for each kind of stage, and one for the whole record: measures what the limits ask for and
// adds requirements and findings.
#pragma once

#include "core/judge/weld_case.h"
#include "core/measure/spread.h"

namespace soakwright {

void judge_whole_record(const RecordCase& record_case, const std::vector<std::size_t>& judged);
void judge_ramp(const WeldCase& weld, const Stage& stage, const RampStage& asked);
void judge_hold(const WeldCase& weld, const Stage& stage, const HoldStage& asked, std::size_t hold);
void judge_keep(const WeldCase& weld, const Stage& stage, const KeepStage& asked);

/// Puts a measured spread into its requirement, and its places among the findings.
void add_spread(const WeldCase& weld, Requirement& requirement, const Spread& spread, bool something_unseen);

}  // namespace soakwright
