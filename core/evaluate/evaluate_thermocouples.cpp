// SPDX-License-Identifier: GPL-3.0-or-later
// The minimum number of thermocouples with valid readings, for each weld.
#include "core/evaluate/stages/stage_evaluations.h"
#include "core/measure/traces/known_channels.h"

namespace soakwright {
namespace {

/// Readings that are no measurement may be confirmed or excluded by a person: until then they decide nothing.
Verdict verdict_of(const Requirement& requirement, const FewestKnown& fewest) {
  if (!beyond_limit(requirement, static_cast<double>(fewest.count))) return Verdict::met;
  return beyond_limit(requirement, static_cast<double>(fewest.count_if_confirmed)) ? Verdict::not_met
                                                                                   : Verdict::inconclusive;
}

}  // namespace

void evaluate_thermocouples(const WeldCase& weld) {
  const int least = weld.procedure.record_limits.thermocouples_min.value_or(0);
  Requirement requirement = requirement_for(RequirementKind::thermocouples, 0, weld.weld, least);
  const HoldStage* first = nullptr;
  const HoldStage* last = nullptr;
  for (const Stage& stage : weld.procedure.stages)
    if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) {
      if (first == nullptr) first = hold;
      last = hold;
    }
  std::optional<Span> time = weld.time();
  if (first != nullptr) time = first_entry_to_last_exit(weld.set, weld.group, weld.time(), *first, *last);
  if (!time) {
    requirement.remarks.push_back(state(Sentence::nobody_through_the_holds));
  } else {
    const FewestKnown fewest = fewest_known(weld.set, weld.group, *time);
    set_measured(requirement, static_cast<double>(fewest.count));
    requirement.at_s = fewest.time.first;
    requirement.from_s = fewest.time.first;
    requirement.to_s = fewest.time.second;
    requirement.verdict = verdict_of(requirement, fewest);
    if (requirement.verdict == Verdict::inconclusive)
      requirement.remarks.push_back(state(Sentence::enough_if_confirmed,
                                          Count::of(static_cast<std::int64_t>(fewest.count_if_confirmed))));
  }
  if (requirement.verdict != Verdict::met) {
    Finding finding =
        finding_on(requirement, requirement.verdict == Verdict::not_met ? Finding::Kind::not_met
                                                                        : Finding::Kind::inconclusive);
    finding.from_s = requirement.from_s;
    finding.to_s = requirement.to_s;
    finding.extreme = requirement.measured_quantity();
    weld.out.findings.push_back(std::move(finding));
  }
  weld.out.requirements.push_back(std::move(requirement));
}

}  // namespace soakwright
