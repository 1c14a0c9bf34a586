// One hold of one weld, and what the judging of its requirements has in common.
#pragma once

#include <string>

#include "core/judge/weld_case.h"

namespace soakwright {

struct HoldCase {
  const WeldCase& weld;
  const Stage& stage;
  const HoldStage& asked;
  std::size_t index = 0;   ///< among the weld's holds
  const HoldCourse& hold;  ///< by the readings alone

  [[nodiscard]] Requirement start(RequirementKind kind, double limit) const {
    return requirement_for(kind, stage.number, weld.weld, limit);
  }
  void finish(Requirement requirement) const { weld.out.requirements.push_back(std::move(requirement)); }
  /// One finding with the requirement's own text, where it is not met or undecided.
  void add_own_finding(const Requirement& requirement) const;
  /// "590.0 °C to 620.0 °C".
  [[nodiscard]] std::string say_band() const;
  [[nodiscard]] Band band() const { return {hold.low_c, hold.high_c}; }
};

void judge_hold_time(const HoldCase& hold);
void judge_hold_time_max(const HoldCase& hold);
void judge_departures(const HoldCase& hold);
void judge_over(const HoldCase& hold);
void judge_edge(const HoldCase& hold);
void judge_tempering(const HoldCase& hold, RequirementKind kind, double limit);

/// Continuous and accumulated time at grace 0, 2, 5 and 10 min, on the readings alone.
std::vector<HoldBasis> hold_bases(const HoldCase& hold);
/// The weld's holds under each of these graces, for hold_bases().
std::vector<std::vector<HoldCourse>> holds_under_graces(const WeldCase& weld);
/// When each channel of the group came in first and left last.
std::vector<InAndOutBasis> ins_and_outs(const HoldCase& hold);

}  // namespace soakwright
