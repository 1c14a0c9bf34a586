// SPDX-License-Identifier: GPL-3.0-or-later
// The spread of a stage as a requirement; heat, cool and hold stages share it.
#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/stages/stage_evaluations.h"

namespace soakwright {
namespace {

void add_places(const WeldCase& weld, const Requirement& requirement, const std::vector<WideTime>& places) {
  for (const WideTime& place : places) {
    Finding finding =
        finding_on(requirement, place.surely ? Finding::Kind::not_met : Finding::Kind::inconclusive);
    finding.channel = weld.name(place.widest.hottest);
    finding.from_s = place.time.first;
    finding.to_s = place.time.second;
    finding.extreme = TemperatureDifference::of_kelvin(place.widest.kelvin);
    finding.what = {
        state(Sentence::hotter_than, *finding.channel, weld.name(place.widest.coldest), *finding.extreme)};
    if (!place.surely)
      finding.what.push_back(
          state(Sentence::within_uncertainty, TemperatureDifference::of_kelvin(place.widest.uncertainty_k)));
    weld.out.findings.push_back(std::move(finding));
  }
}

}  // namespace

bool has_spread_requirement(const WeldCase& weld, const Stage& stage, std::optional<double> within_m) {
  if (can_compare(weld.record, weld.set, weld.group, within_m)) return true;
  Finding note;
  note.weld = weld.weld;
  const std::string id = requirement_for(RequirementKind::spread, stage.number, weld.weld, 0.0).id;
  note.what = {
      weld.group.size() < 2
          ? state(Sentence::spread_of_one, id, Count::of(static_cast<std::int64_t>(weld.group.size())))
          : state(Sentence::spread_out_of_reach, id, Ratio::of(within_m.value_or(0.0)))};
  weld.out.findings.push_back(std::move(note));
  return false;
}

void add_spread(const WeldCase& weld, Requirement& requirement, const Spread& spread,
                const SpreadGaps& gaps) {
  if (!spread.widest) {
    requirement.verdict = Verdict::inconclusive;
    requirement.remarks.push_back(state(gaps.not_measured));
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    weld.out.findings.push_back(std::move(finding));
    return;
  }
  const MeasuredSpread& widest = *spread.widest;
  if (weld.guard != nullptr)
    set_measured(requirement, widest.kelvin, widest.uncertainty_k);
  else
    set_measured(requirement, widest.kelvin);
  requirement.alternatives.spread = SpreadAlternative{widest.hottest_c, widest.coldest_c};
  requirement.channel = weld.name(widest.hottest);
  requirement.channel_2 = weld.name(widest.coldest);
  requirement.at_s = widest.at_s;
  const bool another = spread.largest && spread.largest->kelvin > widest.kelvin + kTemperatureSlack;
  remark_uncertainty(weld, requirement);
  if (another) {
    requirement.remarks.push_back(state(Sentence::nearest_to_limit_with_u));
    requirement.remarks.push_back(state(
        Sentence::widest_as_measured, weld.name(spread.largest->hottest), weld.name(spread.largest->coldest),
        TemperatureDifference::of_kelvin(spread.largest->kelvin), AtMoment{spread.largest->at_s}));
  }
  if (spread.surely)
    requirement.verdict = Verdict::not_met;
  else if (beyond_limit(requirement, widest.held_k()))
    requirement.verdict = Verdict::inconclusive;
  else if (gaps.unseen != Sentence::none)
    requirement.verdict = Verdict::inconclusive;
  else
    requirement.verdict = Verdict::met;
  if (requirement.verdict == Verdict::inconclusive && gaps.unseen != Sentence::none)
    requirement.remarks.push_back(state(gaps.unseen));
  add_places(weld, requirement, spread.places);
}

}  // namespace soakwright
