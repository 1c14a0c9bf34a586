// SPDX-License-Identifier: GPL-3.0-or-later
// One function for each kind of stage, and one for the whole record: measures what the limits ask for and
// adds requirements and findings.
#pragma once

#include <optional>
#include <string>

#include "core/evaluate/weld_case.h"
#include "core/measure/spread.h"

namespace soakwright {

void evaluate_record_limits(const RecordCase& record_case, const std::vector<std::size_t>& evaluated);
void evaluate_ramp(const WeldCase& weld, const Stage& stage, const RampStage& specified);
void evaluate_hold(const WeldCase& weld, const Stage& stage, const HoldStage& specified, std::size_t hold);
void evaluate_maintain(const WeldCase& weld, const Stage& stage, const MaintainStage& specified);

/// The minimum number of thermocouples with valid readings, for one weld.
void evaluate_thermocouples(const WeldCase& weld);

/// What the record does not show of a spread.
struct SpreadGaps {
  Sentence not_measured = Sentence::spread_not_measured;
  Sentence unseen = Sentence::none;  ///< why a wider one may be hidden
};
/// Whether two evaluated channels can be compared; where not, a note says that the limit is no requirement.
bool has_spread_requirement(const WeldCase& weld, const Stage& stage, std::optional<double> within_m);
/// Puts a measured spread into its requirement, and its places among the findings.
void add_spread(const WeldCase& weld, Requirement& requirement, const Spread& spread, const SpreadGaps& gaps);

}  // namespace soakwright
