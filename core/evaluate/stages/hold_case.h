// SPDX-License-Identifier: GPL-3.0-or-later
// One hold of one weld, and what the evaluating of its requirements has in common.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/weld_case.h"

namespace soakwright {

struct HoldCase {
  const WeldCase& weld;
  const Stage& stage;
  const HoldStage& specified;
  std::size_t index = 0;   ///< among the weld's holds
  const HoldCourse& hold;  ///< by the readings alone

  [[nodiscard]] Requirement start(RequirementKind kind, double limit) const {
    return requirement_for(kind, stage.number, weld.weld, limit);
  }
  void finish(Requirement requirement) const { weld.out.requirements.push_back(std::move(requirement)); }
  /// One finding on the requirement itself, where it is not met or inconclusive.
  void add_own_finding(const Requirement& requirement) const;
  [[nodiscard]] SpecifiedRange specified_range() const { return {specified.low, specified.high}; }
  [[nodiscard]] TemperatureRange range() const { return {hold.low_c, hold.high_c}; }
};

void evaluate_hold_time(const HoldCase& hold);
void evaluate_hold_time_max(const HoldCase& hold);
void evaluate_excursions(const HoldCase& hold);
void evaluate_over(const HoldCase& hold);
void evaluate_edge(const HoldCase& hold);
void evaluate_tempering(const HoldCase& hold, RequirementKind kind, double limit);

/// Continuous and accumulated time with excursions of 0, 2, 5 and 10 min allowed, on the readings alone; with
/// `least_s` the verdict that each gives.
std::vector<HoldAlternative> hold_alternatives(const HoldCase& hold, std::optional<double> least_s = {});
/// The verdict on a hold time: enough for certain is met, not enough even if possible not met. Where the
/// excursions counted in exceed a tenth of it, met only if it is met without them too.
Verdict hold_time_verdict(const CycleShare& time, double least_s);
/// These holds again under another excursion_allowed; the channels' own spans are left out.
std::vector<HoldCourse> with_excursion_allowed(const WeldCase& weld, const std::vector<HoldCourse>& holds,
                                               RangeEdge edge, const ExcursionAllowed& excursion_allowed);
/// The weld's holds under each of these excursions_allowed, for hold_alternatives().
std::vector<std::vector<HoldCourse>> holds_by_excursion_allowed(const WeldCase& weld);
/// When each channel of the group came in first and left last.
std::vector<InAndOutAlternative> ins_and_outs(const HoldCase& hold);

}  // namespace soakwright
